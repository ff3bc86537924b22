package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The price: lines that add up to the last minor unit whatever the prices, and what each line is. */
class CostLinesTest {

    private static final long SEED = 20261124;

    /** Minor units by ISO 4217: yen has none, a Kuwaiti dinar a thousand. */
    private static final List<String> CURRENCIES = List.of("USD 2", "EUR 2", "JPY 0", "KWD 3", "CLP 0", "TND 3");

    static Stream<Long> seeds() {
        return LongStream.range(SEED, SEED + 300).boxed();
    }

    private static String decimal(SplittableRandom random, int digits, int decimals) {
        return BigDecimal.valueOf(random.nextLong((long) Math.pow(10, digits + decimals)), decimals)
                .toPlainString();
    }

    private static RequestTree anyPrices(SplittableRandom random, String currency) {
        List<String> fields = new ArrayList<>(List.of("\"currency\": \"" + currency + "\""));
        String[][] rates = {
            {"labour", "h", "min"},
            {"filler", "lb", "kg"},
            {"gas", "ft3", "L"},
            {"electricity", "kWh", "MJ"},
            {"fuel", "lb", "m3"}
        };
        for (String[] rate : rates) {
            if (random.nextInt(5) > 0) {
                fields.add("\"" + rate[0] + "\": \"" + decimal(random, random.nextInt(1, 6), random.nextInt(5)) + "/"
                        + rate[1 + random.nextInt(2)] + "\"");
            }
        }
        for (String share : List.of("overhead", "rework", random.nextBoolean() ? "markup" : "margin")) {
            if (random.nextInt(3) > 0) {
                fields.add("\"" + share + "\": " + BigDecimal.valueOf(random.nextInt(900), 3));
            }
        }
        if (random.nextBoolean()) {
            fields.add("\"minimumCharge\": \"" + decimal(random, random.nextInt(2, 8), random.nextInt(4)) + "\"");
        }
        List<String> work = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            work.add(
                    random.nextBoolean()
                            ? "{\"item\": \"jig " + i + "\", \"amount\": \"" + decimal(random, 4, random.nextInt(4))
                                    + "\"}"
                            : "{\"item\": \"bend " + i + "\", \"quantity\": \"" + random.nextInt(1000)
                                    + "/7 h\", \"rate\": \"" + decimal(random, 3, 3) + "/h\"}");
        }
        fields.add("\"otherWork\": [" + String.join(", ", work) + "]");
        return RequestTree.sample()
                .put("prices", "{" + String.join(", ", fields) + "}")
                .put("frame.quantity", Integer.toString(random.nextInt(1, 2000)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void linesAddUpToTheLastMinorUnit(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String[] currency = CURRENCIES.get(random.nextInt(CURRENCIES.size())).split(" ");
        int decimals = Integer.parseInt(currency[1]);
        RequestTree request = anyPrices(random, currency[0]);
        JsonNode cost = request.estimate().path("cost");
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : cost.path("lines")) {
            BigDecimal amount = new BigDecimal(line.path("amount").textValue());
            assertEquals(decimals, amount.scale(), line + ", seed " + seed);
            assertTrue(amount.signum() >= 0, line + ", seed " + seed);
            sum = sum.add(amount);
        }
        BigDecimal total = new BigDecimal(cost.path("total").textValue());
        assertEquals(0, sum.compareTo(total), sum + " for " + total + ", seed " + seed);
        assertEquals(decimals, total.scale(), "seed " + seed);
        BigDecimal quantity = new BigDecimal(
                RequestTree.of(request.text()).at("frame.quantity").asText());
        assertEquals(
                total.divide(quantity, decimals, RoundingMode.HALF_EVEN),
                new BigDecimal(cost.path("perFrame").textValue()),
                "seed " + seed);
        assertEquals(currency[0], cost.path("currency").textValue());
    }

    /** Each share is of what stands above it, in the order rework, overhead, margin or markup, and the least charge. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void eachShareIsOfWhatStandsAbove(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        JsonNode cost = anyPrices(random, "KWD").estimate().path("cost");
        BigDecimal above = BigDecimal.ZERO;
        List<String> order = new ArrayList<>();
        for (JsonNode line : cost.path("lines")) {
            BigDecimal amount = new BigDecimal(line.path("amount").textValue());
            String item = line.path("item").textValue();
            if (List.of("rework", "overhead", "markup", "margin").contains(item)) {
                BigDecimal share = new BigDecimal(line.path("rate").textValue());
                BigDecimal factor = item.equals("margin")
                        ? share.divide(BigDecimal.ONE.subtract(share), MathContext.DECIMAL128)
                        : share;
                assertEquals(
                        above.multiply(factor).setScale(3, RoundingMode.HALF_EVEN), amount, item + ", seed " + seed);
                order.add(item.equals("markup") ? "margin" : item);
            }
            above = above.add(amount);
        }
        assertEquals(
                Stream.of("rework", "overhead", "margin")
                        .filter(order::contains)
                        .toList(),
                order,
                "seed " + seed);
    }

    /** A margin of 0.20 of the price and a markup of 0.25 on the cost are the same money. */
    @Test
    void aMarginIsAShareOfThePriceAndAMarkupOfTheCost() {
        JsonNode margin = RequestTree.sample().estimate().path("cost");
        JsonNode markup = RequestTree.sample()
                .drop("prices.margin")
                .put("prices.markup", "0.25")
                .estimate()
                .path("cost");
        assertEquals(margin.path("total"), markup.path("total"));
        assertEquals("markup", markup.path("lines").get(6).path("item").textValue());
        BigDecimal total = new BigDecimal(margin.path("total").textValue());
        BigDecimal line =
                new BigDecimal(margin.path("lines").get(6).path("amount").textValue());
        assertEquals(0.20, line.doubleValue() / total.doubleValue(), 1e-5);
    }

    @ParameterizedTest
    @CsvSource({"1816.30, 1816.30, 7", "1816.31, 1816.31, 8", "2000, 2000.00, 8", "0, 1816.30, 7"})
    void aMinimumChargeFillsUpWhatIsLacking(String minimum, String total, int lines) {
        JsonNode cost = RequestTree.sample()
                .put("prices.minimumCharge", "\"" + minimum + "\"")
                .estimate()
                .path("cost");
        assertEquals(total, cost.path("total").textValue());
        assertEquals(lines, cost.path("lines").size());
        if (lines == 8) {
            JsonNode last = cost.path("lines").get(7);
            assertEquals("minimum charge", last.path("item").textValue());
            assertEquals(
                    new BigDecimal(total).subtract(new BigDecimal("1816.30")),
                    new BigDecimal(last.path("amount").textValue()));
        }
    }

    @Test
    void otherWorkIsPricedByItsOwnUnitsAndChangesTheHeading() {
        JsonNode cost = RequestTree.sample()
                .put(
                        "prices",
                        "{\"currency\": \"USD\", \"otherWork\": ["
                                + "{\"item\": \"cope\", \"quantity\": \"90 min\", \"rate\": \"55.00/h\"},"
                                + "{\"item\": \"tube\", \"quantity\": \"12.5 m\", \"rate\": \"3.10/ft\"},"
                                + "{\"item\": \"paint\", \"quantity\": \"2 m2\", \"rate\": \"4/m2\"},"
                                + "{\"item\": \"plate\", \"quantity\": \"3 kg\", \"rate\": \"1.20/lb\"},"
                                + "{\"item\": \"bend\", \"quantity\": \"12 each\", \"rate\": \"4.25/each\"},"
                                + "{\"item\": \"jig\", \"amount\": \"120\"}]}")
                .estimate()
                .path("cost");
        assertEquals("welding and other work", cost.path("heading").textValue());
        List<String> amounts = new ArrayList<>();
        cost.path("lines")
                .forEach(line -> amounts.add(line.path("item").textValue() + " "
                        + line.path("amount").textValue()));
        // 1.5 h; 41.0105 ft; 2 m²; 6.61387 lb; 12 pieces
        assertEquals(
                List.of("cope 82.50", "tube 127.13", "paint 8.00", "plate 7.94", "bend 51.00", "jig 120.00"), amounts);
        assertEquals("396.57", cost.path("total").textValue());
    }

    @Test
    void whatIsUsedButNotPricedIsCautioned() {
        JsonNode answer = RequestTree.sample()
                .put("prices", "{\"currency\": \"USD\", \"labour\": \"65.00/h\"}")
                .estimate();
        List<String> told = new ArrayList<>();
        answer.path("cautions").forEach(caution -> {
            if (caution.path("cause").textValue().equals("not-priced")) {
                told.add(caution.path("text").textValue());
            }
        });
        assertEquals(List.of("Used but not priced, since prices leave it out: filler, gas, electricity, fuel."), told);
        assertEquals("1236.63", answer.path("cost").path("total").textValue());
        List<String> all = RequestTree.sample().estimate().path("cautions").findValuesAsText("cause");
        assertTrue(!all.contains("not-priced"), all.toString());
    }

    /** Propane as a gas at 15 °C and 1 atm is 1.87 to 1.90 kg/m³ (any gas table, from memory). */
    @Test
    void fuelIsPricedByMassOrByVolume() {
        JsonNode byMass = RequestTree.sample().put("prices.fuel", "\"1000/kg\"").estimate();
        JsonNode byVolume =
                RequestTree.sample().put("prices.fuel", "\"1000/m3\"").estimate();
        double mass = new BigDecimal(
                        byMass.path("cost").path("lines").get(4).path("amount").textValue())
                .doubleValue();
        double volume = new BigDecimal(byVolume.path("cost")
                        .path("lines")
                        .get(4)
                        .path("amount")
                        .textValue())
                .doubleValue();
        assertEquals(1.88, mass / volume, 0.02);
    }

    /** Half a cent goes to the even neighbour: 0.125 to 0.12, 0.135 to 0.14. */
    @ParameterizedTest
    @CsvSource({"0.125, 0.12", "0.135, 0.14", "0.1251, 0.13", "0.005, 0.00", "0.015, 0.02"})
    void halvesGoToTheEvenCent(String rate, String amount) {
        JsonNode cost = RequestTree.sample()
                .put(
                        "prices",
                        "{\"currency\": \"USD\", \"otherWork\": [{\"item\": \"tag\", \"quantity\": \"1 each\", \"rate\": \""
                                + rate + "/each\"}]}")
                .estimate()
                .path("cost");
        assertEquals(amount, cost.path("total").textValue());
    }
}
