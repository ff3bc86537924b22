package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Regressions: what this code gave when it agreed with the reference. Not a check of truth, but of change. */
class PinnedTransientTest {

    /** Of a figure: mathematical functions differ in the last bits between Java versions, and steps with them. */
    private static final double SAME = 1e-6;

    private static void pinned(double expected, double actual) {
        assertEquals(expected, actual, SAME * expected);
    }

    @Test
    void theUsualStart() {
        StartTransient start = StartTransient.of(Rig.usual());
        pinned(7.38779390e-04, start.netSurge());
        pinned(5.85209764e-04, start.peakFlow());
        pinned(5.57775779e+00, start.timeWithin5Percent());
        pinned(6.48216515e-04, start.turbulentVolume().getAsDouble());
        pinned(2.35972601e-04, start.afterOff(2).netSurge());
    }

    @Test
    void theStartThroughAnOrifice() {
        StartTransient start = StartTransient.of(Rig.withOrifice());
        pinned(2.81362670e-04, start.netSurge());
        pinned(2.65434243e-04, start.netSurge(11.5));
        pinned(1.63970883e+01, start.timeWithin1Percent());
        pinned(1.53553128e-04, start.repeated(3, 4).netSurge(3));
    }
}
