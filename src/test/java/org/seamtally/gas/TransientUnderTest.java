package org.seamtally.gas;

import java.util.Arrays;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/** What the benchmarks reach of this room's insides: the usual start, and the same line left to general solvers. */
public final class TransientUnderTest {

    private TransientUnderTest() {}

    /** The usual hose, longer by a little: a set-up never seen before. */
    public static SetUp longerBy(double metres) {
        return Rig.with(rig -> rig.length += metres);
    }

    /** Mass balances of one cell that the usual start takes. */
    public static long balances() {
        return StartTransient.of(Rig.usual()).cellBalances();
    }

    /** The usual start on a line of cells, by an explicit adaptive solver for a time; counts the balances into [1]. */
    public static double[] explicitly(int cells, double seconds) {
        SetUp setUp = Rig.usual();
        FlowPath path = new FlowPath(setUp);
        double length = setUp.hose().length();
        double[] positions = new Resolution(cells, 1e-5).positions(length);
        double[] lengths = new double[cells];
        Arrays.fill(lengths, length / (cells - 1));
        lengths[0] /= 2;
        lengths[cells - 1] /= 2;
        HoseLine line = new HoseLine(
                setUp.hose(),
                positions,
                lengths,
                path.friction(),
                setUp.supplyPressure(),
                path.meter(),
                setUp.gas().gasConstant() * setUp.gasTemperature());
        HoseLine.Balance balance = new HoseLine.Balance(cells);
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return cells + 1;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                line.balance(Arrays.copyOf(y, cells), path.torchEnd(), balance, false);
                double[] rates = Arrays.copyOf(balance.rates, cells + 1);
                // in mg: then one tolerance does for pressures in Pa and for the excess
                rates[cells] = (balance.outflow - setUp.massFlow()) * 1e6;
                return rates;
            }
        };
        double[] start = new double[cells + 1];
        Arrays.fill(start, 0, cells, setUp.supplyPressure());
        double excess = new DormandPrince853Integrator(1e-12, 1, 1, 1e-5)
                .integrate(equation, new ODEState(0, start), seconds)
                .getPrimaryState()[cells];
        return new double[] {excess / 1e6 / setUp.referenceDensity(), line.balances()};
    }

    /** The usual start by the reference of the tests: a stiff solver with a Jacobian by differences. */
    public static double stiffly(int cells) {
        return new ReferenceHose(Rig.usual(), cells).net;
    }
}
