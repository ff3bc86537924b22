package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GasUseTest {

    private final StartTransient start = StartTransient.of(Rig.withOrifice());
    private static final double FLOW = 15 * Rig.CUBIC_FOOT_PER_HOUR;

    private GasUse joint(double arcTime, int segments, int tacks) {
        return GasUse.of(start, new JointArcs(arcTime, segments, 2, tacks, new GasTimes(0.5, 9), Optional.empty()));
    }

    @ParameterizedTest
    @CsvSource({
        // A, s: 1 s per 10 A, at least 8 s; a rule of thumb of the trade (handbooks, from memory)
        "5, 8",
        "80, 8",
        "81, 8.1",
        "90, 9",
        "200, 20"
    })
    void postFlowIsASecondPerTenAmperesAndAtLeastEight(double current, double seconds) {
        assertEquals(seconds, GasTimes.usualPostFlow(current), 1e-12);
    }

    @Test
    void theSampleFrameThrowsAway20149LitresIn74Starts() {
        // 90 A, 15 ft³/h, 0.025 in orifice; arc times by volume from 88.1367 s for 814.383 mm³, as far as the greatest
        // travel speed allows; figures computed apart
        GasUse frame = joint(88.1367, 4, 4)
                .times(2)
                .plus(joint(58, 2, 3).times(4))
                .plus(joint(34.6, 1, 2).times(8))
                .plus(joint(39.2699, 2, 3).times(2))
                .plus(joint(18.6, 1, 0).times(4));
        assertEquals(74, frame.starts());
        assertEquals(20.149, frame.startSurge() / Rig.LITRE, 0.001);
        assertEquals(4.36551, frame.preFlow() / Rig.LITRE, 5e-6);
        assertEquals(78.5792, frame.postFlow() / Rig.LITRE, 5e-5);
        // 838.504 s of arc and 84 s of tacks: 108.843 L; the arc times above are rounded
        assertEquals(108.843, frame.arc() / Rig.LITRE, 0.1);
        assertEquals(211.94, frame.total() / Rig.LITRE, 0.1);
        assertEquals(0, frame.backPurge() + frame.leak(), 0);
    }

    @Test
    void eachStartSurgesWithinItsOwnTime() {
        GasUse use = joint(20, 2, 3);
        assertEquals(2 * start.netSurge(19.5) + 3 * start.netSurge(11.5), use.startSurge(), 1e-15);
        assertEquals(FLOW * 26, use.arc(), 1e-15);
        assertEquals(FLOW * 0.5 * 5, use.preFlow(), 1e-15);
        assertEquals(FLOW * 9 * 5, use.postFlow(), 1e-15);
        assertEquals(5, use.starts());
        assertEquals(3 * start.netSurge(11.5), joint(0, 0, 3).startSurge(), 1e-15);
        assertEquals(2 * start.netSurge(19.5), joint(20, 2, 0).startSurge(), 1e-15);
        assertEquals(0, joint(0, 0, 0).total(), 0);
    }

    @Test
    void backPurgeFlowsBeforeAndWhileTheArcBurns() {
        GasUse use = GasUse.of(
                start,
                new JointArcs(30, 2, 2, 4, new GasTimes(0, 0), Optional.of(new BackPurge(5 * Rig.LITRE / 60, 120))));
        assertEquals(5.0 / 60 * 150 * Rig.LITRE, use.backPurge(), 1e-15);
        assertEquals(0, use.preFlow() + use.postFlow(), 0);
    }

    @Test
    void aSettingNotReachedTakesWhatFlows() {
        StartTransient short_ = StartTransient.of(Rig.with(rig -> {
            rig.flow = 80 * Rig.CUBIC_FOOT_PER_HOUR;
            rig.bore = 0.08 * Rig.INCH;
        }));
        GasUse use = GasUse.of(short_, new JointArcs(10, 1, 0, 0, new GasTimes(1, 8), Optional.empty()));
        assertEquals(short_.steady().greatestFlow() * 19, use.total(), 1e-12);
        assertEquals(0, use.startSurge(), 0);
    }

    @Test
    void partsAddUpAndMultiply() {
        GasUse a = new GasUse(1, 2, 3, 4, 5, 6, 7);
        GasUse b = new GasUse(10, 20, 30, 40, 50, 60, 70);
        assertEquals(new GasUse(11, 22, 33, 44, 55, 66, 77), a.plus(b));
        assertEquals(b, a.times(10));
        assertEquals(GasUse.NONE, a.times(0));
        assertEquals(a, a.plus(GasUse.NONE));
        assertEquals(21, a.total(), 0);
        assertEquals(new GasUse(0, 0, 0, 0, 0, 30, 0), GasUse.leaking(0.5, 60));
        assertThrows(ArithmeticException.class, () -> a.times(Long.MAX_VALUE));
        assertThrows(IllegalArgumentException.class, () -> a.times(-1));
        assertThrows(IllegalArgumentException.class, () -> GasUse.NONE.times(-1));
    }

    @Test
    void sharesAreWeldingNeededAndWasted() {
        GasUse.Shares shares = new GasUse(1, 2, 3, 4, 5, 6, 7).shares();
        assertEquals(6.0 / 21, shares.welding(), 1e-15);
        assertEquals(6.0 / 21, shares.preAndPostFlow(), 1e-15);
        assertEquals(9.0 / 21, shares.surgeAndLeak(), 1e-15);
        assertEquals(new GasUse.Shares(0, 0, 0), GasUse.NONE.shares());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesWhatCannotBe(double bad) {
        GasTimes times = new GasTimes(0, 0);
        assertThrows(IllegalArgumentException.class, () -> new GasTimes(bad, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasTimes(0, bad));
        assertThrows(IllegalArgumentException.class, () -> new BackPurge(bad, 0));
        assertThrows(IllegalArgumentException.class, () -> new BackPurge(0, bad));
        assertThrows(IllegalArgumentException.class, () -> new JointArcs(bad, 1, 0, 0, times, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new JointArcs(1, 1, bad, 0, times, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(bad, 0, 0, 0, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, bad, 0, 0, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, 0, bad, 0, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, 0, 0, bad, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, 0, 0, 0, bad, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, 0, 0, 0, 0, bad, 0));
        assertThrows(IllegalArgumentException.class, () -> GasUse.leaking(bad, 1));
        assertThrows(IllegalArgumentException.class, () -> GasUse.leaking(1, bad));
        // nothing times what cannot be is not nothing
        assertThrows(IllegalArgumentException.class, () -> GasUse.leaking(bad, 0));
        assertThrows(IllegalArgumentException.class, () -> GasUse.leaking(0, bad));
        assertThrows(IllegalArgumentException.class, () -> GasTimes.usualPostFlow(bad));
    }

    @Test
    void refusesCountsThatCannotBe() {
        GasTimes times = new GasTimes(0, 0);
        assertThrows(IllegalArgumentException.class, () -> new JointArcs(1, -1, 0, 0, times, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new JointArcs(1, 1, 0, -1, times, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new JointArcs(1, 0, 0, 0, times, Optional.empty()));
        assertThrows(IllegalArgumentException.class, () -> new GasUse(0, 0, 0, 0, 0, 0, -1));
        assertThrows(IllegalArgumentException.class, () -> GasTimes.usualPostFlow(0));
    }
}
