package org.seamtally.gas;

import org.hipparchus.analysis.UnivariateFunction;

/** Meter, hose, orifice and torch line in their order, in steady flow: which pressures a flow needs, and what passes. */
final class FlowPath {

    private final SetUp setUp;
    private final HoseFriction friction;
    private final TorchEnd torchEnd;

    FlowPath(SetUp setUp) {
        this.setUp = setUp;
        friction = new HoseFriction(setUp.hose().insideDiameter(), setUp.gas(), setUp.gasTemperature());
        torchEnd = TorchEnd.of(setUp);
    }

    HoseFriction friction() {
        return friction;
    }

    TorchEnd torchEnd() {
        return torchEnd;
    }

    double valvePressureFor(double massFlow) {
        return torchEnd.pressureFor(massFlow);
    }

    /** What p² falls by along the hose, Pa². */
    double squareDrop(double massFlow) {
        return friction.gradientFor(massFlow) * setUp.hose().length();
    }

    /** The supply pressure that a flow needs where the meter takes none: the same wherever the meter sits. */
    double openMeterPressureFor(double massFlow) {
        double valve = valvePressureFor(massFlow);
        return Math.sqrt(valve * valve + squareDrop(massFlow));
    }

    double hoseInletFor(double massFlow) {
        return setUp.meterAt() == MeterPlace.SUPPLY ? openMeterPressureFor(massFlow) : setUp.supplyPressure();
    }

    /** @param massFlow kg/s, at most the greatest */
    double hoseEndFor(double massFlow) {
        if (setUp.meterAt() == MeterPlace.SUPPLY) {
            return valvePressureFor(massFlow);
        }
        double supply = setUp.supplyPressure();
        return Math.sqrt(Math.max(supply * supply - squareDrop(massFlow), 0));
    }

    private double meterInletFor(double massFlow) {
        return setUp.meterAt() == MeterPlace.SUPPLY ? setUp.supplyPressure() : hoseEndFor(massFlow);
    }

    private double meterOutletFor(double massFlow) {
        return setUp.meterAt() == MeterPlace.SUPPLY ? hoseInletFor(massFlow) : valvePressureFor(massFlow);
    }

    boolean meterChokedAt(double massFlow) {
        return meterOutletFor(massFlow) <= setUp.gas().criticalPressureRatio() * meterInletFor(massFlow);
    }

    /** What passes with the meter open, kg/s: the flow that needs just the supply's pressure. */
    double greatestFlow() {
        double supply = setUp.supplyPressure();
        double high = setUp.massFlow();
        while (openMeterPressureFor(high) < supply) {
            high *= 2;
        }
        return Bracketed.root(flow -> openMeterPressureFor(flow) - supply, 0, high);
    }

    /** The meter as it passes the set flow in this set-up, kg/s being the setting's. */
    Restriction meter() {
        double flow = setUp.massFlow();
        return Restriction.passing(
                flow, meterInletFor(flow), meterOutletFor(flow), setUp.gas(), setUp.gasTemperature());
    }

    /**
     * The flow through this set-up when the meter's area is the one that passes the setting from the supply in choked
     * flow, kg/s.
     *
     * @param most the setting, or what passes with the meter open where that is less, kg/s
     */
    double chokedMeterFlow(double most) {
        double set = setUp.massFlow();
        Restriction meter = Restriction.passing(set, setUp.supplyPressure(), 0, setUp.gas(), setUp.gasTemperature());
        if (setUp.meterAt() == MeterPlace.SUPPLY && meterChokedAt(most) && most == set) {
            return set;
        }
        UnivariateFunction more =
                flow -> meter.at(meterInletFor(flow), meterOutletFor(flow)).massFlow() - flow;
        // a hair above its critical ratio the meter still passes the setting, to the last bit
        return more.value(most) >= 0 ? most : Bracketed.root(more, 0, most);
    }
}
