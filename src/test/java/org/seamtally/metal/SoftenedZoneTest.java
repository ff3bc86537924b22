package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.seamtally.catalogue.HeatTreatment;
import org.seamtally.catalogue.Steels;
import org.seamtally.quantity.UnitSystem;

/**
 * Common practice, no source: quenched-and-tempered tube loses strength beside the seam down towards the normalized tube's,
 * which is 95 ksi up to 0.188 in wall and 90 ksi above (MIL-HDBK-5, from memory).
 */
class SoftenedZoneTest {

    private static final double KSI = 6.894757e6;

    private static BaseMetal steel(String name) {
        return BaseMetal.of(Steels.find(name).orElseThrow());
    }

    @Test
    void tubeOf150KsiFallsTowards95() {
        SoftenedZone found = SoftenedZone.of(steel("4130 HT-150"), 2.413e-3).orElseThrow();
        assertEquals(95 * KSI, found.least().getAsDouble(), 100);
        assertEquals(150 * KSI, found.greatest().getAsDouble(), 100);
        assertTrue(found.reason()
                .in(UnitSystem.US)
                .contains("from 150 ksi down towards the 95 ksi of the normalized tube"));
    }

    @Test
    void heavyWallFallsTowards90() {
        double limit = 0.188 * 0.0254;
        assertEquals(
                95 * KSI,
                SoftenedZone.of(steel("4130 HT-150"), limit)
                        .orElseThrow()
                        .least()
                        .getAsDouble(),
                100);
        SoftenedZone heavy = SoftenedZone.of(steel("4130 HT-150"), limit + 1e-6).orElseThrow();
        assertEquals(90 * KSI, heavy.least().getAsDouble(), 0.1e6);
        assertTrue(heavy.reason().in(UnitSystem.US).contains("down towards the 90 ksi"));
    }

    @Test
    void otherConditionsHaveNone() {
        assertEquals(Optional.empty(), SoftenedZone.of(steel("4130"), 2e-3));
        assertEquals(Optional.empty(), SoftenedZone.of(steel("1020"), 2e-3));
    }

    @Test
    void withoutANormalizedFormTheLossIsNotKnown() {
        SoftenedZone found = SoftenedZone.of(steel("S690QL"), 6e-3).orElseThrow();
        assertTrue(found.least().isEmpty());
        assertEquals(770e6, found.greatest().getAsDouble());
        assertTrue(found.reason().in(UnitSystem.US).contains("How much is not known here"));
    }

    @Test
    void withoutAStrengthTheRangeIsOpenAbove() {
        BaseMetal base = new BaseMetal(
                "own",
                Analyses.MID_4130,
                OptionalDouble.empty(),
                HeatTreatment.QUENCHED_AND_TEMPERED,
                Optional.of("4130"));
        SoftenedZone found = SoftenedZone.of(base, 2e-3).orElseThrow();
        assertTrue(found.greatest().isEmpty());
        assertEquals(95 * KSI, found.least().getAsDouble(), 100);
        assertTrue(found.reason().in(UnitSystem.US).contains("from the tube's own strength down"));
    }

    @Test
    void aWallThatCannotBeIsRefused() {
        BaseMetal base = steel("4130");
        assertThrows(IllegalArgumentException.class, () -> SoftenedZone.of(base, 0));
    }

    /** Handbook range, from memory: 29 000 to 30 500 ksi. */
    @Test
    void stiffnessIsTheSameForEverySteel() {
        assertTrue(YoungsModulus.LEAST < 29_700 * KSI && 29_700 * KSI < YoungsModulus.GREATEST);
        assertEquals(205e9, (YoungsModulus.LEAST + YoungsModulus.GREATEST) / 2);
        assertTrue(YoungsModulus.WHY.contains("200 to 210 GPa"));
    }
}
