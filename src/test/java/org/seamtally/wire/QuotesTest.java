package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.quote.PriceBookName;

/** Quotes made, revised and found; their price from prices or from a price book. */
class QuotesTest {

    private final QuoteRig rig = new QuoteRig();

    private static Map<String, String> keys(List<Violation> violations) {
        Map<String, String> keys = new TreeMap<>();
        violations.forEach(violation -> keys.put(violation.path(), violation.key()));
        return keys;
    }

    @Test
    void aQuoteIsTheEstimateOfItsRequestAndWhatItSaysBesides() throws Exception {
        RequestTree asked = QuoteRig.priced()
                .put("customerReference", "\"Inquiry 7\"")
                .put("validUntil", "\"2031-04-30\"")
                .put("notes", "\"Two lines:\\nall coped.\"");
        Receipt.Kept kept = rig.create(asked.text());
        JsonNode answer = RequestTree.parse(new String(kept.answer(), StandardCharsets.UTF_8));
        assertEquals(kept.quote().toString(), answer.path("id").asText());
        assertEquals("Q-000001", answer.path("number").asText());
        assertEquals(1, answer.path("revision").asInt());
        assertEquals("2031-03-04T12:00:00.500Z", answer.path("made").asText());
        assertEquals("Inquiry 7", answer.path("customerReference").asText());
        assertEquals("2031-04-30", answer.path("validUntil").asText());
        assertEquals("Two lines:\nall coped.", answer.path("notes").asText());
        assertFalse(answer.has("priceBook"));
        assertEquals(RequestTree.parse(asked.text()), answer.path("request"));
        JsonNode estimate = QuoteRig.priced().estimate();
        ((com.fasterxml.jackson.databind.node.ObjectNode) estimate).set("engine", answer.path("engine"));
        assertEquals(estimate, answer.path("estimate"));
        assertEquals(
                answer.at("/estimate/cost/total").asText(),
                answer.at("/revisions/0/total").asText());
        assertEquals(answer, rig.read(kept.quote(), 1, UnitSystem.SI));
    }

    @Test
    void whatIsAskedIsKeptDigitForDigit() throws Exception {
        String text = QuoteRig.priced().put("steel", "{\"dilution\": 0.300}").text();
        Receipt.Kept kept = rig.create("\ufeff \n" + text + "\n ");
        JsonNode answer = rig.read(kept.quote(), 1, UnitSystem.SI);
        assertEquals("0.300", answer.at("/request/steel/dilution").asText());
    }

    @ParameterizedTest
    @CsvSource({
        "validUntil, '\"2031-02-30\"', not-a-date",
        "validUntil, '\"30.04.2031\"', not-a-date",
        "validUntil, '\"2031-4-30\"', not-a-date",
        "validUntil, 20310430, not-a-date",
        "validUntil, '[\"2031-04-30\"]', wrong-shape",
        "validUntil, '\"2031-03-02\"', out-of-range",
        "customerReference, '\"\"', empty",
        "customerReference, 7, not-text",
        "customerReference, '\"a\\nb\"', not-text",
        "notes, '\"a\\u0000b\"', not-text",
        "notes, '{\"a\": 1}', wrong-shape",
        "priceBook, '\"shop\"', contradiction",
        "otherWork, '[]', contradiction",
        "customerRefrence, '\"x\"', unknown-field",
        "estimate, '{}', unknown-field",
        "steel, '\"4130\"', wrong-shape",
        "prices, '[]', wrong-shape",
        "prices, null, missing",
    })
    void badFieldsAreToldByTheirPath(String field, String value, String key) {
        String path = field.equals("prices") && key.equals("missing") ? "priceBook" : field;
        assertEquals(
                Map.of(path, key),
                keys(rig.refused(QuoteRig.priced().put(field, value).text())));
    }

    @Test
    void theNearestFieldIsTold() {
        Violation violation = rig.refused(
                        QuoteRig.priced().put("customerRefrence", "\"x\"").text())
                .get(0);
        assertTrue(violation.message().contains("\"customerReference\""), violation.message());
        assertTrue(violation.taken().containsAll(List.of("frame", "prices", "notes", "priceBook")));
        assertFalse(violation.taken().contains("estimate"), violation.taken().toString());
    }

    @Test
    void allThatIsWrongIsToldAtOnceInThePathsOfWhatWasSent() {
        RequestTree bad = QuoteRig.priced()
                .put("frame.joints[0].branch.wall", "\"2 kg\"")
                .put("frame.joints[1].kind", "\"rivet\"")
                .put("frame.joints[0].colour", "\"red\"")
                .put("prices.labour", "52")
                .put("validUntil", "\"soon\"");
        assertEquals(
                List.of(
                        "frame.joints[0].branch.wall",
                        "frame.joints[0].colour",
                        "frame.joints[1].kind",
                        "prices.labour",
                        "validUntil"),
                rig.refused(bad.text()).stream().map(Violation::path).toList());
        assertEquals(Map.of("frame", "missing", "priceBook", "missing"), keys(rig.refused("{}")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[]", "null", "\"x\"", "{", "{\"frame\":1,\"frame\":2}", "{}{}", "7"})
    void whatIsNoRequestIsRefused(String body) {
        assertFalse(rig.refused(body).isEmpty());
        assertEquals(1, rig.kept.nextNumber(QuoteRig.SHOP).value(), "nothing was numbered");
    }

    @Test
    void theLastDayMayBeTodayWhereverTheSenderIs() throws Exception {
        // at noon it is the 3rd where the last day ends, and the 5th where the next one has begun
        rig.create(QuoteRig.priced().put("validUntil", "\"2031-03-04\"").text());
        rig.clock.pass(Duration.ofHours(23));
        rig.create(QuoteRig.priced().put("validUntil", "\"2031-03-04\"").text());
        rig.clock.pass(Duration.ofHours(2));
        assertEquals(
                Map.of("validUntil", "out-of-range"),
                keys(rig.refused(
                        QuoteRig.priced().put("validUntil", "\"2031-03-04\"").text())));
    }

    @Test
    void aQuoteTakesTheVersionOfItsDay() throws Exception {
        String asked = QuoteRig.request("priceBook", "\"shop\"").text();
        assertEquals(Map.of("priceBook", "unknown-word"), keys(rig.refused(asked)));
        rig.putBook("shop", 1, "2031-03-05", QuoteRig.PRICES);
        assertEquals(Map.of("priceBook", "not-effective-yet"), keys(rig.refused(asked)));
        rig.putBook("shop", 2, "2031-03-10", QuoteRig.PRICES.replace("52.00", "60.00"));
        rig.clock.pass(Duration.ofHours(12));
        UUID first = rig.create(asked).quote();
        rig.clock.pass(Duration.ofDays(5));
        UUID second = rig.create(asked).quote();
        // the third corrects the first, and is effective at once: it was made last
        rig.putBook("shop", 3, "2031-03-05", QuoteRig.PRICES.replace("52.00", "55.00"));
        UUID third = rig.create(asked).quote();
        List<Integer> versions = List.of(first, second, third).stream()
                .map(quote -> version(quote))
                .toList();
        assertEquals(List.of(1, 2, 3), versions);
        JsonNode again = rig.read(first, 1, UnitSystem.SI);
        assertEquals("2031-03-05", again.at("/priceBook/effective").asText());
        assertEquals(
                "/v1/price-books/shop/versions/1", again.at("/priceBook/href").asText());
        assertEquals("52.00/h", again.at("/estimate/cost/lines/0/rate").asText());
    }

    private int version(UUID quote) {
        try {
            return rig.read(quote, 1, UnitSystem.SI).at("/priceBook/version").asInt();
        } catch (RefusedException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void ownLinesComeAfterThoseOfThePriceBook() throws Exception {
        rig.putBook(
                "shop",
                1,
                "2031-01-01",
                QuoteRig.PRICES.replace("}", ",\"otherWork\":[{\"item\":\"Packing\",\"amount\":\"12.00\"}]}"));
        UUID quote = rig.create(QuoteRig.request(
                                "priceBook",
                                "\"shop\"",
                                "otherWork",
                                "[{\"item\":\"Bend tubes\",\"amount\":\"30.00\"}]")
                        .text())
                .quote();
        JsonNode lines = rig.read(quote, 1, UnitSystem.SI).at("/estimate/cost/lines");
        assertEquals("Packing", lines.path(3).path("item").asText());
        assertEquals("Bend tubes", lines.path(4).path("item").asText());
        assertEquals("30.00", lines.path(4).path("amount").asText());
    }

    @Test
    void aBooksQuoteIsThatOfItsPricesSent() throws Exception {
        rig.putBook("shop", 1, "2031-01-01", QuoteRig.PRICES);
        UUID byBook =
                rig.create(QuoteRig.request("priceBook", "\"shop\"").text()).quote();
        UUID byPrices = rig.create(QuoteRig.priced().text()).quote();
        assertEquals(
                rig.read(byPrices, 1, UnitSystem.SI).path("estimate"),
                rig.read(byBook, 1, UnitSystem.SI).path("estimate"));
        assertEquals(
                rig.read(byPrices, 1, UnitSystem.US).path("estimate"),
                rig.read(byBook, 1, UnitSystem.US).path("estimate"));
        assertEquals(
                QuoteRig.priced().estimate(UnitSystem.US).path("perFrame"),
                rig.read(byBook, 1, UnitSystem.US).at("/estimate/perFrame"));
    }

    @Test
    void aRevisionIsAWholeRequestAndTheFirstStays() throws Exception {
        UUID quote = rig.create(QuoteRig.priced().text()).quote();
        JsonNode first = rig.read(quote, 1, UnitSystem.SI).path("estimate");
        rig.clock.pass(Duration.ofHours(1));
        rig.revise(quote, 1, QuoteRig.priced().put("frame.quantity", "5").text());
        assertEquals(first, rig.read(quote, 1, UnitSystem.SI).path("estimate"));
        JsonNode latest = RequestTree.parse(RequestTree.json(
                rig.quotes.find(QuoteRig.SHOP, quote, UnitSystem.SI).orElseThrow()));
        assertEquals(2, latest.path("revision").asInt());
        assertEquals(5, latest.at("/estimate/quantity").asInt());
        assertEquals("2031-03-04T12:00:00.500Z", latest.path("created").asText());
        assertEquals("2031-03-04T13:00:00.500Z", latest.path("made").asText());
        assertEquals(2, latest.path("revisions").size());
        assertEquals(
                "/v1/quotes/" + quote + "/revisions/2",
                latest.at("/revisions/1/href").asText());
        assertEquals(
                new Receipt.Stale(2),
                rig.quotes.revise(
                        QuoteRig.SHOP,
                        quote,
                        QuoteRig.body(QuoteRig.priced().text()),
                        UnitSystem.SI,
                        null,
                        from -> from == 1));
        assertEquals(
                new Receipt.Unknown(),
                rig.quotes.revise(
                        QuoteRig.SHOP,
                        UUID.randomUUID(),
                        QuoteRig.body(QuoteRig.priced().text()),
                        UnitSystem.SI,
                        null,
                        from -> true));
    }

    @Test
    void aKeyCountsOnce() throws Exception {
        String asked = QuoteRig.priced().text();
        Receipt.Kept first = (Receipt.Kept) rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(asked), UnitSystem.SI, "k");
        Receipt.Kept again = (Receipt.Kept) rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(asked), UnitSystem.SI, "k");
        assertEquals(first.quote(), again.quote());
        assertArrayEquals(first.answer(), again.answer());
        assertEquals(
                new Receipt.OtherRequest(),
                rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(asked + " "), UnitSystem.SI, "k"));
        assertEquals(
                new Receipt.OtherRequest(), rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(asked), UnitSystem.US, "k"));
        assertEquals(1, rig.quotes.list(QuoteRig.SHOP, null, 10, null).items().size());

        Receipt.Kept revised = (Receipt.Kept) rig.quotes.revise(
                QuoteRig.SHOP, first.quote(), QuoteRig.body(asked), UnitSystem.SI, "k", from -> from == 1);
        Receipt.Kept revisedAgain = (Receipt.Kept) rig.quotes.revise(
                QuoteRig.SHOP, first.quote(), QuoteRig.body(asked), UnitSystem.SI, "k", from -> from == 1);
        assertEquals(2, revised.revision());
        assertArrayEquals(revised.answer(), revisedAgain.answer());
        assertEquals(2, revisedAgain.revision());
    }

    @Test
    void whoIsOvertakenByTheSameRequestIsAnsweredAlike() throws Exception {
        String asked = QuoteRig.priced().text();
        assertOvertaken(asked, asked, (quicker, slower) -> {
            Receipt.Kept kept = assertInstanceOf(Receipt.Kept.class, slower);
            assertEquals(quicker.quote(), kept.quote());
            assertArrayEquals(quicker.answer(), kept.answer());
        });
        assertOvertaken(asked + " ", asked, (quicker, slower) -> assertEquals(new Receipt.OtherRequest(), slower));
    }

    /** A request's claim runs out while it is worked on, and another with the key is carried out meanwhile. */
    private static void assertOvertaken(String quick, String slow, BiConsumer<Receipt.Kept, Receipt> assertion)
            throws Exception {
        QuoteRig rig = new QuoteRig();
        List<Receipt> quicker = new ArrayList<>();
        AtomicInteger asked = new AtomicInteger();
        Quotes slowly = new Quotes(new Engine("1.0.0"), rig.kept, rig.kept, rig.keys, rig.clock, () -> {
            // the first id is the claim's: the second one is asked for while the quote is worked out
            if (asked.getAndIncrement() != 1) {
                return UUID.randomUUID();
            }
            rig.clock.pass(Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS + 1));
            try {
                quicker.add(rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(quick), UnitSystem.SI, "k"));
            } catch (IOException | RefusedException e) {
                throw new IllegalStateException(e);
            }
            return UUID.randomUUID();
        });
        Receipt slower = slowly.create(QuoteRig.SHOP, QuoteRig.body(slow), UnitSystem.SI, "k");
        assertion.accept((Receipt.Kept) quicker.get(0), slower);
        assertEquals(1, rig.quotes.list(QuoteRig.SHOP, null, 10, null).items().size());
    }

    @Test
    void whatIsRefusedGivesItsKeyBack() throws Exception {
        assertThrows(
                RefusedException.class,
                () -> rig.quotes.create(QuoteRig.SHOP, QuoteRig.body("{}"), UnitSystem.SI, "k"));
        assertEquals(0, rig.keys.keys());
        assertInstanceOf(
                Receipt.Kept.class,
                rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(QuoteRig.priced().text()), UnitSystem.SI, "k"));
        assertInstanceOf(
                IdempotencyKeys.Claim.Granted.class,
                rig.keys.claim(new KeyHolder(QuoteRig.SHOP, "quotes", "other", UUID.randomUUID()), QuoteRig.START));
        assertEquals(
                new Receipt.InFlight(),
                rig.quotes.create(QuoteRig.SHOP, QuoteRig.body(QuoteRig.priced().text()), UnitSystem.SI, "other"));
    }

    @Test
    void anotherEnginesQuoteIsShownAsItWasWorkedOutOrNotAtAll() throws Exception {
        UUID quote = rig.create(QuoteRig.priced().text()).quote();
        JsonNode si = rig.read(quote, 1, UnitSystem.SI);
        rig.quotes = rig.at("2.0.0");
        assertEquals(si, rig.read(quote, 1, UnitSystem.SI));
        RefusedException refused = assertThrows(RefusedException.class, () -> rig.read(quote, 1, UnitSystem.US));
        assertEquals(409, refused.problem().status());
        assertEquals("/problems/other-engine", refused.problem().type());
    }

    @Test
    void quotesAreListedAStretchAtATimeAndFound() throws Exception {
        for (String name : List.of("Gate", "Trail buggy", "Garden gate")) {
            rig.create(QuoteRig.priced().put("frame.name", "\"" + name + "\"").text());
        }
        QuoteList first = rig.quotes.list(QuoteRig.SHOP, null, 2, null);
        assertEquals(
                List.of("Garden gate", "Trail buggy"),
                first.items().stream().map(QuoteList.Item::frame).toList());
        QuoteList rest = rig.quotes.list(QuoteRig.SHOP, null, 2, UUID.fromString(first.next()));
        assertEquals(
                List.of("Q-000001"),
                rest.items().stream().map(QuoteList.Item::number).toList());
        assertEquals(null, rest.next());
        assertEquals(2, rig.quotes.list(QuoteRig.SHOP, "GATE", 2, null).items().size());
        assertEquals(null, rig.quotes.list(QuoteRig.SHOP, "GATE", 2, null).next());
        assertNotEquals(null, rig.quotes.list(QuoteRig.SHOP, "GATE", 1, null).next());
    }

    @Test
    void priceBooksTellWhatIsEffectiveToday() throws Exception {
        rig.putBook("shop", 1, "2031-03-04", QuoteRig.PRICES);
        rig.putBook("shop", 2, "2031-03-05", QuoteRig.PRICES.replace("52.00", "60.000"));
        PriceBookName name = new PriceBookName("shop");
        PriceBookAnswer book = rig.books.find(QuoteRig.SHOP, name).orElseThrow();
        assertEquals(2, book.latest());
        assertEquals(1, book.current().version());
        rig.clock.pass(Duration.ofHours(12));
        assertEquals(
                2, rig.books.find(QuoteRig.SHOP, name).orElseThrow().current().version());
        JsonNode version = RequestTree.parse(
                RequestTree.json(rig.books.version(QuoteRig.SHOP, name, 2).orElseThrow()));
        assertEquals("60.000/h", version.at("/prices/labour").asText());
        assertEquals(Optional.empty(), rig.books.version(QuoteRig.SHOP, name, 3));
        rig.putBook("later", 1, "2099-01-01", QuoteRig.PRICES);
        PriceBookList list = rig.books.list(QuoteRig.SHOP, 1, null);
        assertEquals(null, list.items().get(0).current());
        assertEquals("later", list.next());
        assertEquals(
                new PriceBooks.Added.Stale(2),
                rig.books.add(
                        QuoteRig.SHOP,
                        name,
                        QuoteRig.body("{\"effective\":\"2031-01-01\",\"prices\":" + QuoteRig.PRICES + "}"),
                        latest -> latest == 1));
    }

    @ParameterizedTest
    @CsvSource({
        "'{}', 'effective: missing, prices: missing'",
        "'{\"effective\": \"1 May\", \"prices\": {}}', 'effective: not-a-date, prices.currency: missing'",
        "'{\"effective\": \"2031-01-01\", \"prices\": {\"currency\": \"EUR\", \"labour\": \"-1/h\"}, \"note\": 1}',"
                + " 'note: not-text, prices.labour: out-of-range'",
    })
    void aBadVersionIsRefused(String body, String expected) {
        RefusedException refused = assertThrows(
                RefusedException.class,
                () -> rig.books.add(QuoteRig.SHOP, new PriceBookName("shop"), QuoteRig.body(body), latest -> true));
        assertEquals(
                "{" + expected.replace(": ", "=") + "}",
                keys(refused.problem().violations()).toString());
    }
}
