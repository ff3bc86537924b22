package org.seamtally.gas;

import java.util.Optional;

/**
 * Behind the open valve: an orifice, where there is one, and the torch line in series with it, out into the air.
 *
 * <p>The torch line as one nozzle is a decision of this project: peak flow is a model value, ± 50 %.
 */
final class TorchEnd implements Outlet {

    private static final double AIR = ReferenceState.PRESSURE;

    /** Newton on a monotone function in a bracket; each bisection halves it, so that this is never reached. */
    private static final int MOST_ITERATIONS = 200;

    /** Of the pressure between the two: flow follows to some 1e-12, below any tolerance of the transient. */
    private static final double RELATIVE = 1e-13;

    private final Optional<Restriction> orifice;
    private final Restriction torchLine;

    TorchEnd(Optional<Restriction> orifice, Restriction torchLine) {
        this.orifice = orifice;
        this.torchLine = torchLine;
    }

    static TorchEnd of(SetUp setUp) {
        Restriction torchLine = Restriction.passing(
                setUp.massFlow(), AIR + setUp.torchBackPressure(), AIR, setUp.gas(), setUp.gasTemperature());
        Optional<Restriction> orifice = setUp.orificeDiameter().isEmpty()
                ? Optional.empty()
                : Optional.of(new Restriction(
                        SetUp.ORIFICE_DISCHARGE_COEFFICIENT
                                * Math.PI
                                / 4
                                * Math.pow(setUp.orificeDiameter().getAsDouble(), 2),
                        setUp.gas(),
                        setUp.gasTemperature()));
        return new TorchEnd(orifice, torchLine);
    }

    @Override
    public Rate at(double pressure) {
        if (orifice.isEmpty()) {
            Restriction.Flow flow = torchLine.at(pressure, AIR);
            return new Rate(flow.massFlow(), flow.byUpstream());
        }
        double behind = behindOrifice(pressure);
        Restriction.Flow in = orifice.get().at(pressure, behind);
        Restriction.Flow out = torchLine.at(behind, AIR);
        // in(p, b) = out(b): db/dp = in_p/(out_b − in_b)
        double slope = in.byUpstream() * out.byUpstream() / (out.byUpstream() - in.byDownstream());
        return new Rate(out.massFlow(), slope);
    }

    /**
     * Pressure between orifice and torch line.
     *
     * @param pressure Pa, at the valve
     * @return Pa; the valve's own where there is no orifice
     */
    double behindOrifice(double pressure) {
        if (orifice.isEmpty() || pressure <= AIR) {
            return pressure;
        }
        double low = AIR;
        double high = pressure;
        double behind = (low + high) / 2;
        for (int i = 0; i < MOST_ITERATIONS; i++) {
            Restriction.Flow in = orifice.get().at(pressure, behind);
            Restriction.Flow out = torchLine.at(behind, AIR);
            double excess = in.massFlow() - out.massFlow();
            if (excess > 0) {
                low = behind;
            } else {
                high = behind;
            }
            double next = behind - excess / (in.byDownstream() - out.byUpstream());
            if (!(next >= low && next <= high)) {
                next = (low + high) / 2;
            }
            if (Math.abs(next - behind) <= RELATIVE * behind) {
                return next;
            }
            behind = next;
        }
        return behind;
    }

    /**
     * The pressure at the valve that drives a flow.
     *
     * @param massFlow kg/s
     * @return Pa
     */
    double pressureFor(double massFlow) {
        double behind = torchLine.upstreamFor(massFlow, AIR);
        return orifice.map(o -> o.upstreamFor(massFlow, behind)).orElse(behind);
    }
}
