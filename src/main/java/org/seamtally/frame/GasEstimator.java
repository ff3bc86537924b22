package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.gas.ComparedSetUp;
import org.seamtally.gas.Duty;
import org.seamtally.gas.GasTimes;
import org.seamtally.gas.GasUse;
import org.seamtally.gas.JointArcs;
import org.seamtally.gas.KnownTransients;
import org.seamtally.gas.NamedSetUp;
import org.seamtally.gas.SetUpComparison;
import org.seamtally.gas.StartTransient;

/** What gas set-ups take by themselves, apart from any frame. */
public final class GasEstimator {

    private final KnownTransients starts;

    /** @param starts gas starts computed for earlier requests; only their speed depends on it */
    public GasEstimator(KnownTransients starts) {
        this.starts = starts;
    }

    /**
     * One set-up.
     *
     * @param burnTime of one start, s; null: until the flow is steady
     * @param arcOffTime between two arcs, s; null: the hose fills up fully
     * @param joint to be welded with it
     */
    public GasInquiry inquiry(
            GivenGas gas, GivenArc arc, Double burnTime, Double arcOffTime, Optional<GivenJoint> joint) {
        Assumptions assumptions = new Assumptions();
        Defaults defaults = new Defaults(assumptions);
        StartTransient filled = starts.of(defaults.setUp(gas));
        GasTimes times = new GasTimes(defaults.preFlow(gas), defaults.postFlow(gas, arc));
        Optional<GasUse> ofJoint = joint.map(given -> new JointWork(
                        given,
                        new Settings(GivenSteel.NONE, GivenFiller.NONE, arc, gas, GivenPreheat.NONE),
                        new Assumptions.Place(
                                "joint", "joint", given.mark() == null ? GivenJoint.markOf(0) : given.mark()),
                        assumptions,
                        new Known(starts))
                .gas(0));
        List<Caution> cautions = new ArrayList<>(GasCautions.of(filled, Optional.empty()));
        cautions.addAll(FrameCautions.always());
        return new GasInquiry(
                perStart(filled, times, burnTime, arcOffTime), filled, ofJoint, assumptions.list(), cautions);
    }

    private static GasUse perStart(StartTransient filled, GasTimes times, Double burnTime, Double arcOffTime) {
        double burn = burnTime == null ? filled.timeWithin1Percent() : burnTime;
        StartTransient start =
                arcOffTime == null ? filled : filled.afterOff(arcOffTime - times.preFlow() - times.postFlow());
        return GasUse.of(start, new JointArcs(burn, 1, 0, 0, times, Optional.empty()));
    }

    /**
     * A duty as given.
     *
     * @param startsPerShift 1 or more
     * @param burnTime s
     * @param arcOffTime s
     * @param shiftsPerYear 1 or more
     * @param current A; null where the post-flow is given
     */
    public record GivenDuty(
            int startsPerShift, double burnTime, double arcOffTime, int shiftsPerYear, Double current) {}

    /**
     * A set-up as given.
     *
     * @param name as the reader knows it
     * @param gas its own settings over the shared ones
     * @param price what it costs to get
     */
    public record GivenSetUp(String name, GivenGas gas, Optional<BigDecimal> price) {}

    /**
     * Set-ups compared, with the defaults that were used.
     *
     * @param compared in the order given
     * @param assumptions every default that was used
     * @param cautions what to look at
     */
    public record Comparison(SetUpComparison compared, List<Assumption> assumptions, List<Caution> cautions) {}

    /**
     * Compares set-ups under one duty.
     *
     * @param gasPrice of a m³ at the reference state
     */
    public Comparison compare(
            GivenDuty given, GivenGas shared, List<GivenSetUp> setUps, Optional<BigDecimal> gasPrice) {
        Assumptions assumptions = new Assumptions();
        Defaults defaults = new Defaults(assumptions);
        GivenArc arc = GivenArc.ofCurrent(given.current());
        Duty duty = new Duty(
                given.startsPerShift(),
                given.burnTime(),
                given.arcOffTime(),
                given.shiftsPerYear(),
                new GasTimes(defaults.preFlow(shared), defaults.postFlow(shared, arc)));
        List<NamedSetUp> named = setUps.stream()
                .map(setUp -> new NamedSetUp(setUp.name(), defaults.setUp(setUp.gas()), setUp.price()))
                .toList();
        SetUpComparison compared = SetUpComparison.of(duty, named, gasPrice, starts::of);
        List<Caution> cautions = new ArrayList<>();
        for (ComparedSetUp setUp : compared.setUps()) {
            cautions.addAll(GasCautions.of(setUp.filled(), Optional.of(setUp.name())));
        }
        cautions.addAll(FrameCautions.always());
        return new Comparison(compared, assumptions.list(), cautions);
    }
}
