package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnalysisTest {

    @Test
    void limitsAreReadInEachForm() {
        Map<Element, Limits> limits = Analysis.limits("C 0.28-0.33; P <=0.035; Mn >=0.5");
        assertEquals(new Limits(OptionalDouble.of(0.28), OptionalDouble.of(0.33)), limits.get(Element.C));
        assertEquals(new Limits(OptionalDouble.empty(), OptionalDouble.of(0.035)), limits.get(Element.P));
        assertEquals(new Limits(OptionalDouble.of(0.5), OptionalDouble.empty()), limits.get(Element.MN));
        assertEquals(3, limits.size());
    }

    @Test
    void limitsAdmitTheirOwnEnds() {
        Limits limits = new Limits(OptionalDouble.of(0.28), OptionalDouble.of(0.33));
        assertTrue(limits.admit(0.28));
        assertTrue(limits.admit(0.33));
        assertFalse(limits.admit(0.2799));
        assertFalse(limits.admit(0.3301));
    }

    @ParameterizedTest
    @ValueSource(strings = {"C", "C 0.1 0.2", "Xx 0.1-0.2", "C 0.1", "C 0.3-0.2", "C <=101", "C 0.1-0.2; C 0.1-0.3"})
    void limitsThatAreNoneAreRefused(String cell) {
        assertThrows(IllegalArgumentException.class, () -> Analysis.limits(cell));
    }

    @ParameterizedTest
    @ValueSource(strings = {"C", "c 0.3", "C -0.1", "C 0.1; C 0.1"})
    void compositionsThatAreNoneAreRefused(String cell) {
        assertThrows(IllegalArgumentException.class, () -> Analysis.composition(cell));
    }

    @Test
    void aTypicalAnalysisOutsideItsLimitsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> steel("C 0.34", OptionalDouble.of(600e6), 500e6));
    }

    @Test
    void strengthsOutOfOrderAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> steel("C 0.30", OptionalDouble.of(600e6), 601e6));
        assertThrows(IllegalArgumentException.class, () -> steel("C 0.30", OptionalDouble.of(801e6), 500e6));
        assertThrows(IllegalArgumentException.class, () -> steel("C 0.30", OptionalDouble.of(600e6), 0));
        assertEquals(
                600e6,
                steel("C 0.30", OptionalDouble.of(600e6), 600e6)
                        .leastTensileStrength()
                        .getAsDouble());
    }

    private static Steel steel(String typical, OptionalDouble tensile, double yield) {
        return new Steel(
                "x",
                "x",
                HeatTreatment.AS_ROLLED,
                Analysis.limits("C 0.28-0.33"),
                Analysis.composition(typical),
                tensile,
                OptionalDouble.of(800e6),
                OptionalDouble.of(yield),
                Optional.empty(),
                "x",
                "x",
                Status.READ);
    }

    @Test
    void theEndsOfARangeMayBeTheEndsOfAllThereIs() {
        assertTrue(Analysis.limits("C 0-100").get(Element.C).admit(100));
        assertTrue(Analysis.limits("C 0.2-0.2").get(Element.C).admit(0.2));
        assertThrows(IllegalArgumentException.class, () -> new Limits(OptionalDouble.of(-0.1), OptionalDouble.empty()));
    }

    @Test
    void aFillerOutsideItsLimitsIsRefused() {
        Composition typical = Analysis.composition("C 0.08");
        Map<Element, Limits> limits = Analysis.limits("C <=0.07");
        assertThrows(
                IllegalArgumentException.class,
                () -> new Filler(
                        "x",
                        "x",
                        limits,
                        typical,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "as welded",
                        "x",
                        "x",
                        Status.READ));
    }

    /** NIST SP 811, appendix B: 1 ksi = 6.894757 MPa. */
    @Test
    void strengthsAreReadInTheUnitOfTheirRow() {
        assertEquals(6.894757e6, Strength.pascals(OptionalDouble.of(1), "ksi").getAsDouble(), 1);
        assertEquals(355e6, Strength.pascals(OptionalDouble.of(355), "MPa").getAsDouble());
        assertEquals(OptionalDouble.empty(), Strength.pascals(OptionalDouble.empty(), "ksi"));
        assertThrows(IllegalArgumentException.class, () -> Strength.pascals(OptionalDouble.of(1), "psi"));
    }

    @Test
    void wordsOfTheTablesThatAreUnknownAreRefused() {
        assertEquals("quenched and tempered", HeatTreatment.QUENCHED_AND_TEMPERED.text());
        assertThrows(IllegalArgumentException.class, () -> HeatTreatment.of("annealed twice"));
        assertEquals(HeatTreatment.AS_DRAWN, HeatTreatment.of("as drawn"));
    }
}
