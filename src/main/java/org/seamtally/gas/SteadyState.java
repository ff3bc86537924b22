package org.seamtally.gas;

import java.util.ArrayList;
import java.util.List;

/**
 * A set-up while its gas flows steadily at the setting, or, where that cannot be reached, at the most that passes.
 *
 * @param reachable whether even the open meter passes the set flow
 * @param flow what flows: the setting, or the greatest flow where the setting is not reachable; m³/s, reference state
 * @param greatestFlow what passes with the meter open, m³/s at the reference state
 * @param pressures along the hose from its inlet to its end, Pa absolute
 * @param valvePressure at the gas valve, Pa absolute; the hose's end where the meter is at the supply
 * @param behindOrificePressure at the torch line's inlet, Pa absolute
 * @param meanPressure along the hose, Pa absolute
 * @param storedGas what the filled hose holds above the flowing state, m³ at the reference state: the upper bound of
 *     what a start throws away; 0 where the meter is at the machine
 * @param storedAboveAmbient what the filled hose holds above the outside air's pressure, m³ at the reference state; 0
 *     where the meter is at the machine
 * @param meterChoked whether the meter's flow does not feel the pressure behind it
 * @param drift what becomes of a flow that was set in choked flow when this hose and orifice are put in and the meter
 *     is left alone: flow over setting, less 1
 * @param stands whether the setting is reachable and drifts no further than allowed
 * @param hoseReynolds 4ṁ/(πdµ) in the hose
 * @param nozzleReynolds 4ṁ/(πDµ) in the gas nozzle
 */
public record SteadyState(
        boolean reachable,
        double flow,
        double greatestFlow,
        List<PressurePoint> pressures,
        double valvePressure,
        double behindOrificePressure,
        double meanPressure,
        double storedGas,
        double storedAboveAmbient,
        boolean meterChoked,
        double drift,
        boolean stands,
        double hoseReynolds,
        double nozzleReynolds) {

    /** Enough to draw the curve by; between them p² is a straight line. */
    private static final int POINTS = 11;

    public SteadyState {
        pressures = List.copyOf(pressures);
    }

    /**
     * Pressure at a place.
     *
     * @param position m from the hose's inlet
     * @param pressure Pa absolute
     */
    public record PressurePoint(double position, double pressure) {}

    /** The steady state of a set-up. */
    public static SteadyState of(SetUp setUp) {
        FlowPath path = new FlowPath(setUp);
        double set = setUp.massFlow();
        double greatest = path.greatestFlow();
        boolean reachable = path.openMeterPressureFor(set) < setUp.supplyPressure();
        double flows = reachable ? set : greatest;
        double inlet = path.hoseInletFor(flows);
        double end = path.hoseEndFor(flows);
        double mean = meanPressure(inlet, end);
        double valve = path.valvePressureFor(flows);
        boolean fills = setUp.meterAt() == MeterPlace.SUPPLY;
        double litres =
                setUp.hose().volume() / ReferenceState.PRESSURE * setUp.referenceTemperature() / setUp.gasTemperature();
        double drift = path.chokedMeterFlow(flows) / set - 1;
        return new SteadyState(
                reachable,
                flows / setUp.referenceDensity(),
                greatest / setUp.referenceDensity(),
                along(setUp.hose().length(), inlet, end),
                valve,
                path.torchEnd().behindOrifice(valve),
                mean,
                fills ? litres * (setUp.supplyPressure() - mean) : 0,
                fills ? litres * (setUp.supplyPressure() - ReferenceState.PRESSURE) : 0,
                reachable && path.meterChokedAt(flows),
                drift,
                reachable && Math.abs(drift) <= setUp.allowedDrift(),
                path.friction().reynolds(flows),
                setUp.nozzleReynolds(flows));
    }

    /** Pressure at the hose's inlet, Pa absolute. */
    public double inletPressure() {
        return pressures.get(0).pressure();
    }

    /** Pressure at the hose's end, Pa absolute. */
    public double endPressure() {
        return pressures.get(pressures.size() - 1).pressure();
    }

    /** The mean of p along a hose in which p² falls in a straight line: (2/3)·(a² + ab + b²)/(a + b). */
    private static double meanPressure(double a, double b) {
        return 2.0 / 3 * (a * a + a * b + b * b) / (a + b);
    }

    private static List<PressurePoint> along(double length, double inlet, double end) {
        List<PressurePoint> points = new ArrayList<>(POINTS);
        for (int i = 0; i < POINTS; i++) {
            double share = (double) i / (POINTS - 1);
            points.add(new PressurePoint(share * length, Math.sqrt(inlet * inlet * (1 - share) + end * end * share)));
        }
        return points;
    }
}
