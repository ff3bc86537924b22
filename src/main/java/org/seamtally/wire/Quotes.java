package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntPredicate;
import java.util.function.Supplier;
import org.seamtally.frame.FrameEstimate;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.KeptQuotes;
import org.seamtally.quote.Quote;
import org.seamtally.quote.Revision;
import org.seamtally.quote.RevisionHead;
import org.seamtally.quote.Terms;

/** Quotes: they are estimated and kept, revised, found, and compared. Every method may throw {@link UnavailableException}. */
public final class Quotes {

    // the last place on earth where a day ends: whoever sends today, wherever he is, is not told that it is past
    private static final ZoneOffset LAST_ZONE = ZoneOffset.ofHours(-12);

    private final Engine engine;
    private final KeptQuotes kept;
    private final KeptPriceBooks books;
    private final IdempotencyKeys keys;
    private final InstantSource clock;
    private final Supplier<UUID> ids;

    /** @param ids of new quotes, and of requests that claim a key */
    public Quotes(
            Engine engine,
            KeptQuotes kept,
            KeptPriceBooks books,
            IdempotencyKeys keys,
            InstantSource clock,
            Supplier<UUID> ids) {
        this.engine = engine;
        this.kept = kept;
        this.books = books;
        this.keys = keys;
        // databases keep microseconds: what is answered now is what is answered later
        this.clock = () -> clock.instant().truncatedTo(ChronoUnit.MICROS);
        this.ids = ids;
    }

    /**
     * Estimates and keeps a quote from a {@link QuoteRequest}.
     *
     * @param units of the answer; what is kept is in SI
     * @param key the client's; null where none was sent
     * @throws RefusedException where the body is not what is taken
     */
    public Receipt create(String shop, InputStream body, UnitSystem units, String key)
            throws IOException, RefusedException {
        byte[] sent = body.readAllBytes();
        return keyed(new KeyHolder(shop, "quotes", key, ids.get()), units, sent).once(settled -> {
            Instant now = clock.instant();
            Worked worked = work(shop, sent, 1, now);
            UUID id = ids.get();
            Quote quote = new Quote(id, kept.nextNumber(shop), now, List.of(worked.head()));
            byte[] answer = answer(quote, worked, units);
            kept.create(shop, id, quote.number(), now, worked.revision(), settled.by(answer));
            return new Receipt.Kept(id, 1, answer, false);
        });
    }

    private KeyedRequest keyed(KeyHolder holder, UnitSystem units, byte[] sent) {
        return new KeyedRequest(keys, clock, holder, units, sent);
    }

    /**
     * Estimates and keeps a further revision of a quote from a whole {@link QuoteRequest}.
     *
     * @param expected which number the latest revision may have
     * @throws RefusedException where the body is not what is taken
     */
    public Receipt revise(String shop, UUID id, InputStream body, UnitSystem units, String key, IntPredicate expected)
            throws IOException, RefusedException {
        byte[] sent = body.readAllBytes();
        return keyed(new KeyHolder(shop, "quotes/" + id, key, ids.get()), units, sent)
                .once(settled -> {
                    Optional<Quote> found = kept.find(shop, id);
                    if (found.isEmpty()) {
                        return new Receipt.Unknown();
                    }
                    RevisionHead before = found.get().latest();
                    int latest = before.number();
                    if (!expected.test(latest)) {
                        return new Receipt.Stale(latest);
                    }
                    Instant made = PriceBooks.notBefore(Optional.of(before.made()), clock.instant());
                    Worked worked = work(shop, sent, latest + 1, made);
                    byte[] answer = answer(found.get().with(worked.head()), worked, units);
                    return kept.revise(shop, id, worked.revision(), settled.by(answer))
                            ? new Receipt.Kept(id, latest + 1, answer, false)
                            : new Receipt.Stale(latest + 1);
                });
    }

    /** The latest revision of a quote. */
    public Optional<QuoteAnswer> find(String shop, UUID id, UnitSystem units) throws RefusedException {
        Optional<Quote> quote = kept.find(shop, id);
        return quote.isEmpty()
                ? Optional.empty()
                : revision(shop, quote.get(), quote.get().latest().number(), units);
    }

    /**
     * A revision of a quote.
     *
     * @throws RefusedException 409 where other units than SI are asked for, and another engine worked it out
     */
    public Optional<QuoteAnswer> revision(String shop, UUID id, int number, UnitSystem units) throws RefusedException {
        Optional<Quote> quote = kept.find(shop, id);
        return quote.isEmpty() ? Optional.empty() : revision(shop, quote.get(), number, units);
    }

    private Optional<QuoteAnswer> revision(String shop, Quote quote, int number, UnitSystem units)
            throws RefusedException {
        Optional<Revision> found = kept.revision(shop, quote.id(), number);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        Revision revision = found.get();
        byte[] estimate = units == UnitSystem.SI ? revision.estimate() : again(shop, revision, units);
        return Optional.of(
                QuoteAnswer.of(quote, revision.head(), new JsonText(revision.request()), new JsonText(estimate)));
    }

    private byte[] again(String shop, Revision revision, UnitSystem units) throws RefusedException {
        if (!revision.head().engine().equals(engine.identity().computedBy())) {
            throw new RefusedException(ProblemReport.of(
                    409,
                    "other-engine",
                    "The quote was worked out by another engine.",
                    "Engine " + revision.head().engine().version()
                            + " worked it out, in SI units; this one could give other figures. Ask for units=si."));
        }
        FrameEstimateRequest request = PricedRequest.again(revision.request(), revision.head(), books, shop)
                .estimate();
        return Json.bytes(engine.shown(request, engine.estimate(request), units));
    }

    /**
     * Quotes, the highest number first.
     *
     * @param search a text that they have in them; null for all
     * @param after the quote before the stretch; null for the list's start
     */
    public QuoteList list(String shop, String search, int limit, UUID after) {
        // one more tells whether there are more
        List<Quote> found = kept.list(shop, search, limit + 1, after);
        List<Quote> stretch = found.subList(0, Math.min(limit, found.size()));
        return new QuoteList(
                stretch.stream().map(QuoteList.Item::of).toList(),
                found.size() > limit ? stretch.get(limit - 1).id().toString() : null);
    }

    /** What moved the price from one revision to another; empty where one of them is not there. */
    public Optional<DifferenceAnswer> difference(String shop, UUID id, int from, int to) {
        Optional<Quote> quote = kept.find(shop, id);
        Optional<Revision> before = kept.revision(shop, id, from);
        Optional<Revision> after = kept.revision(shop, id, to);
        return quote.isEmpty() || before.isEmpty() || after.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new RevisionDifference(engine, books, shop).between(quote.get(), before.get(), after.get()));
    }

    /** A request worked out. */
    private record Worked(PricedRequest request, FrameEstimate result, Revision revision) {

        RevisionHead head() {
            return revision.head();
        }
    }

    private Worked work(String shop, byte[] sent, int number, Instant now) throws IOException, RefusedException {
        QuoteRequest quote = RequestReader.read(new ByteArrayInputStream(sent), QuoteRequest.class);
        checkValidity(quote, now);
        PricedRequest request = PricedRequest.at(now, quote, books, shop);
        FrameEstimate result = engine.estimate(request.estimate());
        RevisionHead head = new RevisionHead(
                number,
                now,
                engine.identity().computedBy(),
                quote.terms(),
                request.priceBook(),
                result.name(),
                result.cost().orElseThrow().total());
        byte[] estimate = Json.bytes(engine.shown(request.estimate(), result, UnitSystem.SI));
        return new Worked(request, result, new Revision(head, Json.compact(sent), estimate));
    }

    private static void checkValidity(QuoteRequest quote, Instant now) throws RefusedException {
        Terms terms = quote.terms();
        LocalDate today = LocalDate.ofInstant(now, LAST_ZONE);
        if (terms.validUntil().filter(day -> day.isBefore(today)).isPresent()) {
            throw new RefusedException(ProblemReport.invalid(List.of(new Violation(
                    "validUntil",
                    Violation.Key.OUT_OF_RANGE,
                    "a quote is not over before it is made: today or later is taken",
                    quote.validUntil().given(),
                    null))));
        }
    }

    private byte[] answer(Quote quote, Worked worked, UnitSystem units) {
        byte[] estimate = units == UnitSystem.SI
                ? worked.revision().estimate()
                : Json.bytes(engine.shown(worked.request().estimate(), worked.result(), units));
        return Json.bytes(QuoteAnswer.of(
                quote, worked.head(), new JsonText(worked.revision().request()), new JsonText(estimate)));
    }
}
