package org.seamtally.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.seamtally.frame.FrameEstimate;
import org.seamtally.frame.Prices;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.LineChange;
import org.seamtally.quote.PriceBookVersion;
import org.seamtally.quote.PriceMove;
import org.seamtally.quote.PricedLine;
import org.seamtally.quote.Quote;
import org.seamtally.quote.Revision;
import org.seamtally.quote.RevisionHead;

/** Compares two revisions of a quote. */
final class RevisionDifference {

    private final Engine engine;
    private final KeptPriceBooks books;
    private final String shop;

    RevisionDifference(Engine engine, KeptPriceBooks books, String shop) {
        this.engine = engine;
        this.books = books;
        this.shop = shop;
    }

    DifferenceAnswer between(Quote quote, Revision from, Revision to) {
        return DifferenceAnswer.of(
                quote,
                side(from.head()),
                side(to.head()),
                DifferenceAnswer.change(from.head().total(), to.head().total()),
                LineChange.between(lines(from), lines(to)),
                moved(from, to),
                FieldChange.between(fields(from), fields(to)),
                engine.identity());
    }

    private static DifferenceAnswer.SideAnswer side(RevisionHead head) {
        return new DifferenceAnswer.SideAnswer(
                head.number(),
                head.made().toString(),
                head.priceBook().map(PricedByAnswer::of).orElse(null),
                head.total().getCurrencyUnit().getCode(),
                CostAnswer.amount(head.total()),
                EngineAnswer.of(head.engine()));
    }

    /** The lines of the price as they were answered then. */
    private static List<PricedLine> lines(Revision revision) {
        try {
            JsonNode cost = Json.mapper().readTree(revision.estimate()).path("cost");
            CurrencyUnit currency = CurrencyUnit.of(cost.path("currency").asText());
            List<PricedLine> lines = new ArrayList<>();
            cost.path("lines").forEach(line -> lines.add(line(line, currency)));
            return lines;
        } catch (IOException e) {
            throw new UncheckedIOException("what is kept was written here", e);
        }
    }

    private static PricedLine line(JsonNode line, CurrencyUnit currency) {
        JsonNode quantity = line.path("quantity");
        return new PricedLine(
                line.path("item").asText(),
                quantity.isObject()
                        ? Optional.of(new PricedLine.Measured(
                                quantity.path("value").asDouble(),
                                quantity.path("unit").asText()))
                        : Optional.empty(),
                Optional.ofNullable(line.path("rate").textValue()),
                Money.parse(currency.getCode() + " " + line.path("amount").asText()));
    }

    private Map<String, String> fields(Revision revision) {
        return RequestFields.of(
                revision.request(),
                revision.head()
                        .priceBook()
                        .flatMap(by -> books.find(shop, by.book()).flatMap(book -> book.version(by.version())))
                        .map(PriceBookVersion::prices));
    }

    /**
     * What moved the price, or why that cannot be said.
     *
     * @param why a stable word
     */
    record Moved(Optional<PriceMove> move, Optional<String> why) {

        private static Moved not(String why) {
            return new Moved(Optional.empty(), Optional.of(why));
        }
    }

    private Moved moved(Revision from, Revision to) {
        Money before = from.head().total();
        Money after = to.head().total();
        if (!before.isSameCurrency(after)) {
            return Moved.not("other-currency");
        }
        if (!isOurs(to)) {
            return Moved.not("other-engine");
        }
        try {
            FrameEstimateRequest earlier = PricedRequest.again(from.request(), from.head(), books, shop)
                    .estimate();
            FrameEstimateRequest later =
                    PricedRequest.again(to.request(), to.head(), books, shop).estimate();
            Prices old = earlier.prices().given();
            FrameEstimate work = engine.estimate(later);
            return new Moved(
                    Optional.of(PriceMove.of(
                            before,
                            // the same engine gives the same answer
                            isOurs(from)
                                    ? before
                                    : engine.estimate(earlier).at(old).total(),
                            work.at(old).total(),
                            work.at(old.withOtherWork(later.prices().given().otherWork()))
                                    .total(),
                            after)),
                    Optional.empty());
        } catch (RefusedException e) {
            return Moved.not("not-taken");
        }
    }

    private boolean isOurs(Revision revision) {
        return revision.head().engine().equals(engine.identity().computedBy());
    }
}
