package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every form that is refused, by its key. */
class RefusalsTest {

    @ParameterizedTest(name = "{1}: {2}")
    @CsvSource(
            delimiter = ';',
            value = {
                "LENGTH; 5; unit-missing",
                "LENGTH; 0; unit-missing",
                "LENGTH; 1/2; unit-missing",
                "LENGTH; 1e5; unit-missing",
                "LENGTH; -1-1/2; unit-missing",
                "LENGTH; 5 xyz; unit-unknown",
                "LENGTH; 5 e mm; unit-unknown",
                "LENGTH; 5 m m; unit-unknown",
                "LENGTH; 5'6\"; unit-unknown",
                "LENGTH; 0x10 mm; unit-unknown",
                "LENGTH; 5 mm 3; unit-unknown",
                "LENGTH; 5 m2x; unit-unknown",
                "POWER; 4 mW; unit-unknown",
                "POWER; 4 mw; unit-unknown",
                "ENERGY; 4 mJ; unit-unknown",
                "STRESS; 4 mpa; unit-unknown",
                "GAUGE_PRESSURE; 4 mPa; unit-unknown",
                "GAUGE_PRESSURE; 4 MBAR; unit-unknown",
                "ENERGY_PER_LENGTH; 4 mJ/mm; unit-unknown",
                "HEAT_CONTENT; 4 mJ/kg; unit-unknown",
                "FLOW; 5 NL/min; unit-unknown",
                "GAUGE_PRESSURE; 5 mm; unit-of-another-kind",
                "GAUGE_PRESSURE; 50 psia; unit-of-another-kind",
                "GAUGE_PRESSURE; 1 atm; unit-of-another-kind",
                "PRESSURE; 50 psig; unit-of-another-kind",
                "TIME; 5 m; unit-of-another-kind",
                "LENGTH; 45°; unit-of-another-kind",
                "LENGTH; 5 L; unit-of-another-kind",
                "FLOW; 5 ft3; unit-of-another-kind",
                "GAS_VOLUME; 5 cfh; unit-of-another-kind",
                "ENERGY; 4 kW; unit-of-another-kind",
                "LENGTH; 1,5 in; number-malformed",
                "LENGTH; 1,000 mm; number-malformed",
                "LENGTH; 1.000,5 mm; number-malformed",
                "LENGTH; mm; number-malformed",
                "LENGTH; in 5; number-malformed",
                "LENGTH; .; number-malformed",
                "LENGTH; . mm; number-malformed",
                "LENGTH; -.e5 mm; number-malformed",
                "LENGTH; e5 mm; number-malformed",
                "LENGTH; - mm; number-malformed",
                "LENGTH; - 5 mm; number-malformed",
                "LENGTH; --5 mm; number-malformed",
                "LENGTH; +-5 mm; number-malformed",
                "LENGTH; 1.2.3 mm; number-malformed",
                "LENGTH; 1 2 in; number-malformed",
                "LENGTH; 1.5 2 in; number-malformed",
                "LENGTH; 1 .5 in; number-malformed",
                "LENGTH; 1- 1/2 in; number-malformed",
                "LENGTH; 1--1/2 in; number-malformed",
                "LENGTH; 1-2 in; number-malformed",
                "LENGTH; 5 -in; number-malformed",
                "LENGTH; 1/0 in; number-malformed",
                "LENGTH; 0/0 in; number-malformed",
                "LENGTH; 1-1/0 in; number-malformed",
                "LENGTH; 1/ in; number-malformed",
                "LENGTH; 3/-16 in; number-malformed",
                "LENGTH; /16 in; number-malformed",
                "LENGTH; 1.5/2 in; number-malformed",
                "LENGTH; 3/16.5 in; number-malformed",
                "LENGTH; 1/2/3 in; number-malformed",
                "LENGTH; 1 3/2 in; number-malformed",
                "LENGTH; 1 2/2 in; number-malformed",
                "LENGTH; 1.5 1/2 in; number-malformed",
                "LENGTH; ١ mm; number-malformed",
                "LENGTH; ５ mm; number-malformed",
                "LENGTH; −5 mm; number-malformed",
                "LENGTH; NaN mm; number-not-finite",
                "LENGTH; nan; number-not-finite",
                "LENGTH; Infinity mm; number-not-finite",
                "LENGTH; -inf mm; number-not-finite",
                "LENGTH; +∞ mm; number-not-finite",
                "LENGTH; 1e999 mm; number-not-finite",
                "LENGTH; 1e310 m; number-not-finite",
                "LENGTH; -1e310 m; number-not-finite",
                "LENGTH; 1e400 m; number-not-finite",
                "LENGTH; 1e401 m; number-not-finite",
                "LENGTH; 1e99999999999999999999 m; number-not-finite",
                "LENGTH; 1e-99999999999999999999 m; number-not-finite",
                "LENGTH; 1e-999 mm; number-not-finite",
                "LENGTH; 1e-340 mm; number-not-finite",
                "VOLUME; 1e-320 mm3; number-not-finite",
                "STRESS; 1e305 GPa; number-not-finite",
                "TEMPERATURE; -459.68 degF; number-out-of-physics",
                "TEMPERATURE; -273.16 degC; number-out-of-physics",
                "TEMPERATURE; -1e-9 K; number-out-of-physics",
                "TEMPERATURE; -273.150000000000000000000001 C; number-out-of-physics",
            })
    void isRefused(Dimension dimension, String text, String key) {
        QuantityException refused = assertThrows(QuantityException.class, () -> dimension.read(text));
        assertEquals(key, refused.key());
        assertEquals(text, refused.given());
        assertEquals(dimension.unitsTaken(), refused.taken());
        assertTrue(refused.getMessage().contains("\"" + text + "\""), refused::getMessage);
        assertNamesWhatIsTaken(dimension, refused);
    }

    @Test
    void nothingGiven() {
        for (String text : new String[] {"", "  ", "\t\u00a0", null}) {
            QuantityException refused = assertThrows(QuantityException.class, () -> Dimension.LENGTH.read(text));
            assertEquals(QuantityException.EMPTY, refused.key());
            assertEquals("", refused.given());
            assertNamesWhatIsTaken(Dimension.LENGTH, refused);
        }
    }

    @Test
    void sixtyFiveCharactersAreTooLongAndAreNotCarriedBack() {
        String text = "1." + "0".repeat(61) + "mm";
        QuantityException refused = assertThrows(QuantityException.class, () -> Dimension.LENGTH.read(text));
        assertEquals(QuantityException.TOO_LONG, refused.key());
        assertEquals(text.substring(0, 64) + "…", refused.given());
        QuantityException huge =
                assertThrows(QuantityException.class, () -> Dimension.LENGTH.read("9".repeat(1_000_000)));
        assertEquals(65, huge.given().length());
        assertTrue(huge.getMessage().length() < 300, huge::getMessage);
    }

    @Test
    void sixtyFourCharactersAreCarriedBackWhole() {
        String text = "1." + "0".repeat(60) + "xy";
        QuantityException refused = assertThrows(QuantityException.class, () -> Dimension.LENGTH.read(text));
        assertEquals(QuantityException.UNIT_UNKNOWN, refused.key());
        assertEquals(text, refused.given());
    }

    @Test
    void aTemperatureDifferenceMayFall() {
        assertEquals(-500, Dimension.TEMPERATURE_DIFFERENCE.read("-900 degF"));
    }

    @Test
    void theCommaIsExplained() {
        QuantityException refused = assertThrows(QuantityException.class, () -> Dimension.LENGTH.read("1,5 in"));
        assertTrue(refused.getMessage().contains("a decimal point is taken"), refused::getMessage);
    }

    @Test
    void theKindThatWasGivenIsNamed() {
        QuantityException refused =
                assertThrows(QuantityException.class, () -> Dimension.GAUGE_PRESSURE.read("50 psia"));
        assertEquals(
                "the unit \"psia\" in \"50 psia\" is that of an absolute pressure; a gauge pressure is due, in psi, bar,"
                        + " mbar, Pa, kPa, MPa, such as 50 psi",
                refused.getMessage());
    }

    @Test
    void twoUnitsOfOneSpellingDoNotLoad() {
        UnitTable.Entry metre = UnitTable.unit(tech.units.indriya.unit.Units.METRE, "m");
        UnitTable.Entry inch = UnitTable.unit(systems.uom.common.USCustomary.INCH, "M");
        assertThrows(
                IllegalStateException.class,
                () -> new UnitTable(tech.units.indriya.unit.Units.METRE, false, java.util.List.of(metre, inch)));
        UnitTable.Entry again = UnitTable.unit(systems.uom.common.USCustomary.INCH, "m");
        assertThrows(
                IllegalStateException.class,
                () -> new UnitTable(tech.units.indriya.unit.Units.METRE, false, java.util.List.of(metre, again)));
    }

    @Test
    void aUnitOfAnotherKindHasNoScale() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Scale.of(tech.units.indriya.unit.Units.SECOND, tech.units.indriya.unit.Units.METRE));
    }

    private static void assertNamesWhatIsTaken(Dimension dimension, QuantityException refused) {
        assertTrue(
                refused.getMessage()
                        .endsWith("; " + dimension.words() + " is due, in " + String.join(", ", dimension.unitsTaken())
                                + ", such as " + dimension.example()),
                refused::getMessage);
    }
}
