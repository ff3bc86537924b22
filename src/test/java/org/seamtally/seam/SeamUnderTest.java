package org.seamtally.seam;

import java.util.function.DoubleSupplier;
import org.hipparchus.analysis.integration.SimpsonIntegrator;

/** What the benchmarks reach of this room's insides: the same seam left to a general integrator. */
public final class SeamUnderTest {

    private static final int MOST = 10_000_000;

    private SeamUnderTest() {}

    /** Length (m) and deposit (m³), added together, of half a seam; the groove's fuller face left out. */
    public static DoubleSupplier generally(
            double branchRadius, double mainRadius, double angle, DepositSection section) {
        ByAngle integrand = new ByAngle(branchRadius, mainRadius, angle, section);
        return () -> {
            SimpsonIntegrator rule = new SimpsonIntegrator(SeamPoints.ERROR, 1e-300, 3, 24);
            return rule.integrate(MOST, integrand::length, 0, Math.PI)
                    + rule.integrate(MOST, integrand::deposit, 0, Math.PI);
        };
    }
}
