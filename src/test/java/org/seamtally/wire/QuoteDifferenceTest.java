package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.quantity.UnitSystem;

/** What moved the price from one revision to another, and that it adds up. */
class QuoteDifferenceTest {

    private final QuoteRig rig = new QuoteRig();

    private JsonNode difference(String first, String second) throws Exception {
        UUID quote = rig.create(first).quote();
        rig.revise(quote, 1, second);
        return rig.difference(quote, 1, 2);
    }

    private static List<String> fields(JsonNode difference) {
        List<String> told = new ArrayList<>();
        difference
                .path("fields")
                .forEach(field -> told.add(
                        field.path("path").asText() + ": " + field.path("from").asText("-") + " > "
                                + field.path("to").asText("-")));
        return told;
    }

    private static BigDecimal money(JsonNode node) {
        return new BigDecimal(node.asText());
    }

    /** Lines and causes both are the change of the total, to the cent. */
    private static void assertAddsUp(JsonNode difference, String where) {
        BigDecimal change = money(difference.at("/to/total")).subtract(money(difference.at("/from/total")));
        assertEquals(change, money(difference.path("change")), where);
        BigDecimal lines = BigDecimal.ZERO;
        for (JsonNode line : difference.path("lines")) {
            BigDecimal from = line.has("from") ? money(line.at("/from/amount")) : BigDecimal.ZERO;
            BigDecimal to = line.has("to") ? money(line.at("/to/amount")) : BigDecimal.ZERO;
            assertEquals(to.subtract(from), money(line.path("change")), where + line);
            lines = lines.add(money(line.path("change")));
        }
        assertEquals(change, lines, where);
        BigDecimal moved = BigDecimal.ZERO;
        for (String cause : List.of("engine", "work", "otherWork", "prices")) {
            moved = moved.add(money(difference.path("moved").path(cause)));
        }
        assertEquals(change, moved, where);
    }

    @Test
    void nothingMovedIsNoChange() throws Exception {
        JsonNode difference =
                difference(QuoteRig.priced().text(), QuoteRig.priced().text());
        assertAddsUp(difference, "");
        assertEquals("0.00", difference.path("change").asText());
        assertEquals(List.of(), fields(difference));
        difference.path("lines").forEach(line -> assertEquals(line.path("from"), line.path("to")));
        difference.path("moved").forEach(part -> assertEquals("0.00", part.asText()));
    }

    @Test
    void aDearerHourIsPricesAlone() throws Exception {
        JsonNode difference = difference(
                QuoteRig.priced().text(),
                QuoteRig.priced().put("prices.labour", "\"60.00/h\"").text());
        assertAddsUp(difference, "");
        assertEquals(List.of("prices.labour: \"52.00/h\" > \"60.00/h\""), fields(difference));
        assertEquals(difference.path("change"), difference.at("/moved/prices"));
        assertEquals("labour", difference.at("/lines/0/item").asText());
        assertTrue(money(difference.at("/lines/0/change")).signum() > 0);
        assertEquals("0.00", difference.at("/lines/1/change").asText());
    }

    @Test
    void moreFramesAreWorkAlone() throws Exception {
        JsonNode difference = difference(
                QuoteRig.priced().text(),
                QuoteRig.priced().put("frame.quantity", "4").text());
        assertAddsUp(difference, "");
        assertEquals(difference.path("change"), difference.at("/moved/work"));
        assertEquals("0.00", difference.at("/moved/prices").asText());
    }

    @Test
    void jointsGoByTheirMarksAndOwnLinesByWhatTheyAreFor() throws Exception {
        RequestTree second = QuoteRig.priced()
                .put(
                        "prices.otherWork",
                        "[{\"item\":\"Bend\",\"amount\":\"9.00\"},{\"item\":\"Bend\",\"amount\":\"8.00\"}]")
                .put("steel", "{\"base\": \"4130\"}");
        RequestTree reordered = RequestTree.of(second.text());
        JsonNode plug = reordered.at("frame.joints[1]").deepCopy();
        reordered.drop("frame.joints[1]");
        reordered.put("frame.joints[0].branch.wall", "\"2.5 mm\"");
        reordered = RequestTree.of(reordered
                .text()
                .replace(
                        "\"joints\":[",
                        "\"joints\":[" + plug + ",{\"kind\":\"plug\",\"holeDiameter\":\"6 mm\","
                                + "\"depth\":\"2 mm\"},"));
        RequestTree first = QuoteRig.priced().put("prices.otherWork", "[{\"item\":\"Bend\",\"amount\":\"9.00\"}]");
        JsonNode difference = difference(first.text(), reordered.text());
        assertAddsUp(difference, "");
        assertEquals(
                List.of(
                        "frame.joints[#2].kind: - > \"plug\"",
                        "frame.joints[#2].holeDiameter: - > \"6 mm\"",
                        "frame.joints[#2].depth: - > \"2 mm\"",
                        "frame.joints[A].branch.wall: \"2 mm\" > \"2.5 mm\"",
                        "prices.otherWork[Bend (2)].item: - > \"Bend\"",
                        "prices.otherWork[Bend (2)].amount: - > \"8.00\"",
                        "steel.base: - > \"4130\""),
                fields(difference));
        assertEquals("8.80", difference.at("/moved/otherWork").asText(), "with a tenth of overhead");
    }

    @Test
    void whatWasTakenAwayIsToldToo() throws Exception {
        RequestTree first = QuoteRig.priced()
                .put("prices.otherWork", "[{\"item\":\"Bend\",\"amount\":\"9.00\"}]")
                .put("notes", "\"soon\"");
        JsonNode difference = difference(
                first.text(),
                QuoteRig.priced()
                        .drop("prices.gas")
                        .put("validUntil", "\"2031-05-01\"")
                        .text());
        assertAddsUp(difference, "");
        assertEquals(
                List.of(
                        "validUntil: - > \"2031-05-01\"",
                        "prices.gas: \"6.10/m3\" > -",
                        "prices.otherWork[Bend].item: \"Bend\" > -",
                        "prices.otherWork[Bend].amount: \"9.00\" > -",
                        "notes: \"soon\" > -"),
                fields(difference));
        List<String> items = new ArrayList<>();
        difference.path("lines").forEach(line -> items.add(line.path("item").asText()));
        assertEquals(List.of("labour", "filler", "gas", "Bend", "overhead"), items);
        assertFalse(difference.at("/lines/2").has("to"));
    }

    @Test
    void pricesOfABookAreComparedAsIfTheyWereSent() throws Exception {
        rig.putBook("shop", 1, "2031-01-01", QuoteRig.PRICES);
        String asked = QuoteRig.request("priceBook", "\"shop\"").text();
        UUID quote = rig.create(asked).quote();
        rig.putBook("shop", 2, "2031-01-02", QuoteRig.PRICES.replace("52.00", "50.00"));
        rig.revise(quote, 1, asked);
        JsonNode difference = rig.difference(quote, 1, 2);
        assertAddsUp(difference, "");
        assertEquals(List.of("prices.labour: \"52.00/h\" > \"50.00/h\""), fields(difference));
        assertEquals(1, difference.at("/from/priceBook/version").asInt());
        assertEquals(2, difference.at("/to/priceBook/version").asInt());
        assertEquals(difference.path("change"), difference.at("/moved/prices"));
        JsonNode back = rig.difference(quote, 2, 1);
        assertAddsUp(back, "");
        assertEquals(money(difference.path("change")).negate(), money(back.path("change")));
    }

    @Test
    void moneyOfTwoCurrenciesIsNotSubtracted() throws Exception {
        JsonNode difference = difference(
                QuoteRig.priced().text(),
                QuoteRig.priced().put("prices.currency", "\"USD\"").text());
        assertFalse(difference.has("change"));
        assertFalse(difference.has("moved"));
        assertEquals("other-currency", difference.path("notMoved").asText());
        difference.path("lines").forEach(line -> assertFalse(line.has("change"), line.toString()));
        assertEquals("EUR", difference.at("/from/currency").asText());
        assertEquals("USD", difference.at("/to/currency").asText());
    }

    @Test
    void whatAnEarlierEngineWorkedOutIsWorkedOutAnew() throws Exception {
        UUID quote = rig.create(QuoteRig.priced().text()).quote();
        rig.quotes = rig.at("2.0.0");
        rig.revise(quote, 1, QuoteRig.priced().put("frame.quantity", "4").text());
        JsonNode difference = rig.difference(quote, 1, 2);
        assertAddsUp(difference, "");
        assertEquals("1.0.0", difference.at("/from/engine/version").asText());
        assertEquals("0.00", difference.at("/moved/engine").asText(), "it is the same one under another name");
        JsonNode back = rig.difference(quote, 2, 1);
        assertEquals("other-engine", back.path("notMoved").asText());
        assertFalse(back.has("moved"));
        assertEquals(money(difference.path("change")).negate(), money(back.path("change")));
    }

    @Test
    void aRevisionThatIsNotThereIsNoDifference() throws Exception {
        UUID quote = rig.create(QuoteRig.priced().text()).quote();
        assertEquals(Optional.empty(), rig.quotes.difference(QuoteRig.SHOP, quote, 1, 2));
        assertEquals(Optional.empty(), rig.quotes.difference(QuoteRig.SHOP, UUID.randomUUID(), 1, 1));
        assertEquals(Optional.empty(), rig.quotes.difference("other", quote, 1, 1));
        assertAddsUp(rig.difference(quote, 1, 1), "");
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 40);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whateverMovesItAddsUpToTheCent(long seed) throws Exception {
        Random random = new Random(seed);
        rig.putBook("a", 1, "2031-01-01", prices(random, true));
        rig.putBook("b", 1, "2031-01-01", prices(random, true));
        UUID quote = rig.create(request(random)).quote();
        for (int revision = 1; revision <= 3; revision++) {
            rig.clock.pass(Duration.ofDays(1));
            rig.revise(quote, revision, request(random));
        }
        for (int from = 1; from <= 4; from++) {
            for (int to = 1; to <= 4; to++) {
                JsonNode difference = rig.difference(quote, from, to);
                assertAddsUp(difference, "seed " + seed + ", " + from + " to " + to + ": ");
                assertEquals(
                        difference.at("/to/total"),
                        rig.read(quote, to, UnitSystem.SI).at("/estimate/cost/total"),
                        "seed " + seed);
            }
        }
    }

    private static String request(Random random) {
        RequestTree tree = switch (random.nextInt(4)) {
            case 0 -> QuoteRig.request("priceBook", "\"a\"");
            case 1 -> QuoteRig.request("priceBook", "\"b\"", "otherWork", otherWork(random));
            default -> QuoteRig.request("prices", prices(random, random.nextBoolean()));
        };
        tree.put("frame.quantity", String.valueOf(1 + random.nextInt(9)));
        tree.put("frame.joints[0].count", String.valueOf(1 + random.nextInt(5)));
        tree.put("frame.joints[0].fillet.leg", "\"" + (2 + random.nextInt(5)) + " mm\"");
        if (random.nextBoolean()) {
            tree.drop("frame.joints[1]");
        }
        if (random.nextBoolean()) {
            tree.put("labour", "{\"setUpPerOrder\": \"" + (1 + random.nextInt(90)) + " min\"}");
        }
        return tree.text();
    }

    private static String prices(Random random, boolean all) {
        StringBuilder prices = new StringBuilder("{\"currency\":\"EUR\",\"labour\":\"" + cents(random, 9000) + "/h\"");
        if (all) {
            prices.append(",\"gas\":\"" + cents(random, 1500) + "/m3\",\"filler\":\"" + cents(random, 4000) + "/kg\"");
        }
        if (random.nextBoolean()) {
            prices.append(",\"overhead\":0." + (1 + random.nextInt(98)));
        }
        if (random.nextBoolean()) {
            prices.append(",\"" + (random.nextBoolean() ? "margin" : "markup") + "\":0." + (1 + random.nextInt(70)));
        }
        if (random.nextBoolean()) {
            prices.append(",\"minimumCharge\":\"" + cents(random, 90000) + "\"");
        }
        if (random.nextBoolean()) {
            prices.append(",\"otherWork\":" + otherWork(random));
        }
        return prices.append("}").toString();
    }

    private static String otherWork(Random random) {
        List<String> lines = new ArrayList<>();
        for (String item : List.of("Bend", "Cope", "Bend", "Pack")) {
            if (random.nextBoolean()) {
                lines.add("{\"item\":\"" + item + "\",\"amount\":\"" + cents(random, 9000) + "\"}");
            }
        }
        return lines.toString();
    }

    private static String cents(Random random, int most) {
        return BigDecimal.valueOf(random.nextInt(most), 2).toPlainString();
    }
}
