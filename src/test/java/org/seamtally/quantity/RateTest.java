package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Money by the unit. Expected amounts are worked by hand from the units' definitions. */
class RateTest {

    @ParameterizedTest(name = "{1} for {2}")
    @CsvSource({
        "TIME, 65.00/h, 1.5 h, 97.5",
        "TIME, 65.00/h, 6 min, 6.5",
        "TIME, 1.10/min, 90 s, 1.65",
        "MASS, 12.50/lb, 1 lb, 12.5",
        "MASS, 12.50/lb, 2 oz, 1.5625",
        "MASS, 28/kg, 250 g, 7",
        "GAS_VOLUME, 0.35/ft3, 80 ft3, 28",
        "GAS_VOLUME, 15/m3, 200 L, 3",
        "GAS_VOLUME, 0.02/L, 1 m3, 20",
        "ELECTRICITY, 0.16/kWh, 2.5 kWh, 0.4",
        "ELECTRICITY, 0.16/kWh, 3.6 MJ, 0.16",
        "ELECTRICITY, 0.05/MJ, 1 kWh, 0.18",
        "LENGTH, 2/ft, 18 in, 3",
        "TIME, -5/h, 2 h, -10",
    })
    void costs(Dimension dimension, String rate, String quantity, BigDecimal money) {
        Rate read = Rate.read(rate, dimension);
        assertEquals(
                0, money.compareTo(read.of(dimension.read(quantity))), () -> "" + read.of(dimension.read(quantity)));
    }

    @Test
    void thirtyFourDigitsAreKept() {
        BigDecimal cost = Rate.read("100/h", Dimension.TIME).of(1);
        assertEquals(new BigDecimal("0.02777777777777777777777777777777778"), cost);
    }

    @Test
    void aQuantityInTheRatesUnit() {
        assertEquals(1.5, Rate.read("65.00/h", Dimension.TIME).quantityInUnit(5400));
        assertEquals(1, Rate.read("12.50/lb", Dimension.MASS).quantityInUnit(0.45359237));
        assertEquals(
                80, Rate.read("0.35/ft3", Dimension.GAS_VOLUME).quantityInUnit(Dimension.GAS_VOLUME.read("80 ft3")));
        assertEquals(2.5, Rate.read("1/psi", Dimension.STRESS).quantityInUnit(Dimension.STRESS.read("2.5 psi")), 1e-15);
    }

    @ParameterizedTest
    @CsvSource({
        "65.00/h, 65.00/h",
        "' 65.00 / h ', 65.00/h",
        "65/hr, 65/hr",
        "+65/h, 65/h",
        ".50/min, 0.50/min",
        "-0.5/min, -0.5/min",
    })
    void writtenAgain(String given, String text) {
        assertEquals(text, Rate.read(given, Dimension.TIME).text());
    }

    @Test
    void itsPartsAreKept() {
        Rate rate = Rate.read("65.00/h", Dimension.TIME);
        assertEquals(new BigDecimal("65.00"), rate.amount());
        assertEquals("h", rate.unit());
        assertEquals(Dimension.TIME, rate.dimension());
        assertEquals(rate, new Rate(new BigDecimal("65.00"), "h", Dimension.TIME));
    }

    @ParameterizedTest(name = "{1}: {2}")
    @CsvSource({
        "TIME, 65, unit-missing",
        "TIME, 65/, unit-missing",
        "TIME, 65/ , unit-missing",
        "TIME, 65/fortnight, unit-unknown",
        "TIME, 65//h, unit-unknown",
        "TIME, 65/lb, unit-of-another-kind",
        "ELECTRICITY, 0.16/kW, unit-of-another-kind",
        "TIME, /h, number-malformed",
        "TIME, $65/h, number-malformed",
        "TIME, 65 h, number-malformed",
        "TIME, 65h, number-malformed",
        "TIME, 65 per h, number-malformed",
        "TIME, 6e5/h, number-malformed",
        "TIME, 65.0.0/h, number-malformed",
        "TIME, '1,065.00/h', number-malformed",
        "TIME, 1/2/h, unit-unknown",
        "TIME, NaN/h, number-not-finite",
        "TIME, -Infinity/h, number-not-finite",
        "TIME, '', empty",
        "TIME, 0.00000000000000000000000000000000000000000000000000000000000001/h, too-long",
    })
    void isRefused(Dimension dimension, String text, String key) {
        QuantityException refused = assertThrows(QuantityException.class, () -> Rate.read(text, dimension));
        assertEquals(key, refused.key());
        assertEquals("/" + dimension.unitsTaken().get(0), refused.taken().get(0));
        assertEquals(dimension.unitsTaken().size(), refused.taken().size());
    }

    @Test
    void theRefusalSaysHowARateIsWritten() {
        QuantityException refused = assertThrows(QuantityException.class, () -> Rate.read("65", Dimension.TIME));
        assertEquals(
                "\"65\" has no unit; money for a time is due, in /ms, /s, /min, /h, such as 1.50/h",
                refused.getMessage());
        assertEquals(List.of("/ms", "/s", "/min", "/h"), refused.taken());
    }

    @Test
    void nothingIsPricedByTheDegree() {
        assertThrows(IllegalArgumentException.class, () -> Rate.read("5/degC", Dimension.TEMPERATURE));
        assertEquals(
                0,
                BigDecimal.TEN.compareTo(
                        Rate.read("5/K", Dimension.TEMPERATURE_DIFFERENCE).of(2)));
    }

    @Test
    void aRateOfAnUnknownUnitIsNotMade() {
        QuantityException refused =
                assertThrows(QuantityException.class, () -> new Rate(BigDecimal.ONE, "fortnight", Dimension.TIME));
        assertEquals(QuantityException.UNIT_UNKNOWN, refused.key());
        assertTrue(refused.getMessage().contains("1/fortnight"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void whatIsNotFiniteHasNoPrice(double si) {
        Rate rate = Rate.read("65/h", Dimension.TIME);
        assertThrows(IllegalArgumentException.class, () -> rate.of(si));
        assertThrows(IllegalArgumentException.class, () -> rate.quantityInUnit(si));
    }
}
