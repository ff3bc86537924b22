package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.metal.CoolingTime.Regime;

/** EN 1011-2:2001 annex D, read in second-hand copies; the figures are worked by hand from its formulas. */
class PublishedCoolingTest {

    @ParameterizedTest
    @CsvSource({
        // Q kJ/mm, T0 °C, d mm, t85 three-dimensional, two-dimensional, transition thickness mm
        "1.0, 20, 6, 5.2885, 31.5655, 14.6586, THIN",
        "1.0, 20, 20, 5.2885, 2.8409, 14.6586, THICK",
        "0.3, 20, 1.65, 1.5865, 37.5655, 8.0288, THIN",
        "0.3, 20, 3.0, 1.5865, 11.3636, 8.0288, THIN",
        "0.5, 150, 3.0, 3.9231, 58.8496, 11.6193, THIN",
        "1.5, 100, 25, 9.9643, 5.8642, 19.1789, THICK"
    })
    void coolingTime(double q, double t0, double d, double thick, double thin, double transition, Regime regime) {
        CoolingTime found = CoolingTime.of(q * 1e6 / 0.6, t0 + 273.15, d * 1e-3, SeamShape.BEAD_ON_PLATE);
        assertEquals(thick, found.thick(), 5e-5);
        assertEquals(thin, found.thin(), 5e-5);
        assertEquals(transition, found.transitionThickness() * 1e3, 5e-5);
        assertEquals(regime, found.regime());
        assertEquals(Math.max(thick, thin), found.time(), 5e-5);
        assertEquals(Math.max(thick, thin), found.fastest(), 5e-5);
        assertEquals(300 / Math.max(thick, thin), CoolingTime.SPAN / found.time(), 1e-2);
    }

    /**
     * Shape factors of table D.1, from memory: a fillet 0.67 (0.45 at the fast end) and 0.67, a butt 0.9. By hand for 90 A,
     * 11 V, 4 in/min, 0.095 in and 20 °C: Q 0.350787 kJ/mm.
     */
    @Test
    void aFilletOnThinTube() {
        double arcEnergy = 90 * 11 / (4 * 0.0254 / 60);
        CoolingTime fillet = CoolingTime.of(arcEnergy, 293.15, 2.413e-3, SeamShape.FILLET);
        assertEquals(16.09025, fillet.thin(), 1e-5);
        assertEquals(1.242934, fillet.thick(), 1e-6);
        assertEquals(10.80688, fillet.fastest(), 1e-5);
        assertEquals(8.681897e-3, fillet.transitionThickness(), 1e-9);
        CoolingTime butt = CoolingTime.of(arcEnergy, 293.15, 2.413e-3, SeamShape.BUTT);
        assertEquals(16.09025 * 0.9 / 0.67, butt.thin(), 1e-4);
        assertEquals(1.242934 * 0.9 / 0.67, butt.thick(), 1e-5);
        assertEquals(butt.time(), butt.fastest());
    }

    /** In thick metal the fast end of a fillet's F₂ may fall below the three-dimensional time, which then holds. */
    @Test
    void theFastBoundNeverFallsBelowTheThickPlate() {
        CoolingTime found = CoolingTime.of(1e6, 293.15, 11e-3, SeamShape.FILLET);
        assertEquals(Regime.THIN, found.regime());
        assertTrue(found.thin() * 0.45 / 0.67 < found.thick());
        assertEquals(found.thick(), found.fastest());
    }

    /** At the transition thickness both flows give the same time: that is what the thickness means. */
    @Test
    void bothFlowsMeetAtTheTransition() {
        long seed = 85;
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            double arcEnergy = 2e5 + 3e6 * random.nextDouble();
            double start = 250 + 400 * random.nextDouble();
            SeamShape shape = SeamShape.values()[random.nextInt(3)];
            double transition = CoolingTime.of(arcEnergy, start, 5e-3, shape).transitionThickness();
            CoolingTime at = CoolingTime.of(arcEnergy, start, transition, shape);
            assertEquals(at.thick(), at.thin(), 1e-9 * at.thick(), "seed " + seed + ", run " + i);
            assertEquals(
                    Regime.THICK,
                    CoolingTime.of(arcEnergy, start, transition * 1.000001, shape)
                            .regime());
            assertEquals(
                    Regime.THIN,
                    CoolingTime.of(arcEnergy, start, transition * 0.999999, shape)
                            .regime());
            // more heat or warmer metal cools longer, a thicker wall does not
            assertTrue(CoolingTime.of(arcEnergy * 1.1, start, 5e-3, shape).time()
                    > CoolingTime.of(arcEnergy, start, 5e-3, shape).time());
            assertTrue(CoolingTime.of(arcEnergy, start + 10, 5e-3, shape).time()
                    > CoolingTime.of(arcEnergy, start, 5e-3, shape).time());
            assertTrue(CoolingTime.of(arcEnergy, start, 6e-3, shape).time()
                    <= CoolingTime.of(arcEnergy, start, 5e-3, shape).time());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, 293.15, 0.002",
        "-1, 293.15, 0.002",
        "NaN, 293.15, 0.002",
        "Infinity, 293.15, 0.002",
        "5e5, 773.15, 0.002",
        "5e5, 0, 0.002",
        "5e5, 293.15, 0",
        "5e5, 293.15, Infinity"
    })
    void whatCannotBeIsRefused(double arcEnergy, double start, double thickness) {
        assertThrows(
                IllegalArgumentException.class, () -> CoolingTime.of(arcEnergy, start, thickness, SeamShape.FILLET));
        assertThrows(IllegalArgumentException.class, () -> CoolingRate.of(arcEnergy, start, thickness));
    }

    @Test
    void metalJustBelowTheSpanIsTaken() {
        assertTrue(CoolingTime.of(5e5, 773.0, 2e-3, SeamShape.FILLET).time() > 1e5);
    }

    /**
     * A textbook example after the AWS Welding Handbook, from memory: 6 mm plate at 30 °C shall cool through 550 °C at 6
     * °C/s; the net heat input comes out as 808 J/mm, relative thickness 0.32.
     */
    @Test
    void coolingRateOfAThinPlate() {
        assertEquals(6.00, CoolingRate.at(520, 808e3, 6e-3), 0.005);
    }

    /** By hand, 1 kJ/mm net, 20 mm at 20 °C: relative thickness 0.957 at 540 °C, hence 2π·28·520²/10⁶ K/s. */
    @Test
    void coolingRateOfAThickPlate() {
        assertEquals(47.5713, CoolingRate.of(1e6 / 0.6, 293.15, 20e-3).at540(), 1e-4);
    }

    /** By hand for thin tube: 2π·28·4.4·10⁶·(d/H)²·ΔT³. */
    @Test
    void coolingRateOfThinTube() {
        CoolingRate found = CoolingRate.of(90 * 11 / (4 * 0.0254 / 60), 293.15, 2.413e-3);
        assertEquals(11.51712, found.at700(), 1e-5);
        assertEquals(5.150238, found.at540(), 1e-6);
    }

    /** The handbook parts thin and thick at a relative thickness of 0.75, where the thin equation gives 0.75² of the thick. */
    @Test
    void thePartingOfThinAndThick() {
        double heat = 1e6;
        double thickness = 0.75 / Math.sqrt(4.4e6 * 520 / heat);
        double thick = 2 * Math.PI * 28 * 520 * 520 / heat;
        assertEquals(thick, CoolingRate.at(520, heat, thickness * 1.0001), 1e-9);
        assertEquals(thick * 0.5625, CoolingRate.at(520, heat, thickness * 0.9999), 1e-2);
    }
}
