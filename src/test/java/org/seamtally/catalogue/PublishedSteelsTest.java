package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The table of steels against the standards it quotes. */
class PublishedSteelsTest {

    @Test
    void thereAreAtLeastTwelveSteelsAndNoNameStandsTwice() {
        Set<String> names = new HashSet<>();
        for (Steel steel : Steels.all()) {
            assertTrue(names.add(steel.name().toLowerCase(Locale.ROOT)), steel.name());
            assertFalse(steel.source().isBlank(), steel.name());
            assertFalse(steel.standard().isBlank(), steel.name());
            assertFalse(steel.title().isBlank(), steel.name());
            assertTrue(steel.typical().of(Element.C) > 0, steel.name());
        }
        assertTrue(names.size() >= 12, "only " + names.size());
    }

    /** SAE J404 as a public data sheet for AMS 6360 prints it. */
    @Test
    void limitsOf4130AreThoseOfSaeJ404() {
        Steel steel = Steels.find("4130").orElseThrow();
        assertEquals(range(0.28, 0.33), steel.limits().get(Element.C));
        assertEquals(range(0.40, 0.60), steel.limits().get(Element.MN));
        assertEquals(range(0.15, 0.35), steel.limits().get(Element.SI));
        assertEquals(range(0.80, 1.10), steel.limits().get(Element.CR));
        assertEquals(range(0.15, 0.25), steel.limits().get(Element.MO));
        assertEquals(most(0.035), steel.limits().get(Element.P));
        assertEquals(most(0.040), steel.limits().get(Element.S));
        assertEquals(HeatTreatment.NORMALIZED, steel.heatTreatment());
    }

    /** MIL-HDBK-5, from memory: 95 ksi and 75 ksi; 1 ksi = 6.894757 MPa (NIST SP 811, appendix B). */
    @Test
    void normalized4130HasNinetyFiveKsi() {
        Steel steel = Steels.find("4130").orElseThrow();
        assertEquals(655.0019e6, steel.leastTensileStrength().getAsDouble(), 100);
        assertEquals(517.1068e6, steel.leastYieldStrength().getAsDouble(), 100);
        assertEquals(OptionalDouble.empty(), steel.greatestTensileStrength());
        assertTrue(steel.normalizedForm().isEmpty());
    }

    /** MIL-T-6736B 1.2 names the conditions by their ksi. */
    @Test
    void quenchedAndTemperedConditionsAreNamedByTheirStrength() {
        for (int ksi : List.of(125, 150, 180)) {
            Steel steel = Steels.find("4130 HT-" + ksi).orElseThrow();
            assertEquals(ksi * 6.894757e6, steel.leastTensileStrength().getAsDouble(), 100);
            assertEquals(HeatTreatment.QUENCHED_AND_TEMPERED, steel.heatTreatment());
            assertEquals("4130", steel.normalizedForm().orElseThrow());
            assertEquals(Steels.find("4130").orElseThrow().typical(), steel.typical());
        }
    }

    @Test
    void everyNormalizedFormIsARowOfItsOwn() {
        for (Steel steel : Steels.all()) {
            steel.normalizedForm()
                    .ifPresent(name -> assertEquals(
                            HeatTreatment.NORMALIZED,
                            Steels.find(name).orElseThrow().heatTreatment()));
        }
    }

    /** EN 10025-6, from memory: S690QL up to 50 mm, 690 MPa yield, 770 to 940 MPa. */
    @Test
    void europeanSteelsAreGivenInMegapascals() {
        Steel steel = Steels.find("s690ql").orElseThrow();
        assertEquals(690e6, steel.leastYieldStrength().getAsDouble());
        assertEquals(770e6, steel.leastTensileStrength().getAsDouble());
        assertEquals(940e6, steel.greatestTensileStrength().getAsDouble());
        assertEquals(0.12, steel.typical().of(Element.C));
    }

    @Test
    void anUnknownSteelIsNotFound() {
        assertTrue(Steels.find("4130X").isEmpty());
    }

    private static Limits range(double least, double greatest) {
        return new Limits(OptionalDouble.of(least), OptionalDouble.of(greatest));
    }

    private static Limits most(double greatest) {
        return new Limits(OptionalDouble.empty(), OptionalDouble.of(greatest));
    }
}
