package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.gas.BestOrifice;
import org.seamtally.gas.ComparedSetUp;
import org.seamtally.gas.Duty;
import org.seamtally.gas.GasTimes;
import org.seamtally.gas.GasUse;
import org.seamtally.gas.JointArcs;
import org.seamtally.gas.NamedSetUp;
import org.seamtally.gas.SetUpComparison;
import org.seamtally.gas.StartTransient;

/** What gas set-ups take by themselves, apart from any frame. */
public final class GasEstimator {

    /** Arc time, s, of a start about whose length nothing was said: no tack is shorter. */
    private static final double SHORTEST_BURN = 0.1;

    private final EarlierWork earlier;

    /** @param earlier what was computed for earlier requests; only speed depends on it */
    public GasEstimator(EarlierWork earlier) {
        this.earlier = earlier;
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
        StartTransient filled = earlier.starts().of(defaults.setUp(gas));
        Optional<JointWork> work = joint.map(given -> new JointWork(
                given,
                new Settings(GivenSteel.NONE, GivenFiller.NONE, arc, gas, GivenPreheat.NONE),
                new Assumptions.Place("joint", "joint", given.mark() == null ? GivenJoint.markOf(0) : given.mark()),
                assumptions,
                new Known(earlier)));
        // without a current of its own the request speaks of the joint's
        GivenArc timed = arc.current() == null && work.isPresent()
                ? GivenArc.ofCurrent(work.get().arcSettings().current())
                : arc;
        GasTimes times = new GasTimes(defaults.preFlow(gas), defaults.postFlow(gas, timed));
        List<Caution> cautions = new ArrayList<>(GasCautions.of(filled, Optional.empty()));
        if (gas.leak() != null && gas.leak() > 0) {
            cautions.add(new Caution(
                    "leak-not-counted",
                    "A leak runs through all the labour time, which is not known here: it is not counted. A frame estimate"
                            + " counts it.",
                    Optional.empty()));
        }
        cautions.addAll(FrameCautions.always());
        return new GasInquiry(
                perStart(filled, times, burnTime, arcOffTime),
                filled,
                work.map(GasEstimator::ofJoint),
                assumptions.list(),
                cautions);
    }

    private static GasInquiry.OfJoint ofJoint(JointWork work) {
        GasUse use = work.gas(0);
        return new GasInquiry.OfJoint(use, work.start().steady().storedGas() * use.starts());
    }

    private static GasUse perStart(StartTransient filled, GasTimes times, Double burnTime, Double arcOffTime) {
        double burn = burnTime == null ? filled.timeWithin1Percent() : burnTime;
        if (arcOffTime == null) {
            return GasUse.of(filled, new JointArcs(burn, 1, 0, 0, times, Optional.empty()));
        }
        // where nothing is stored the flow is steady at once, and a start of no length has no rhythm
        Duty alike = new Duty(1, Math.max(burn, SHORTEST_BURN), arcOffTime, 1, times);
        return alike.perStart(filled.repeated(alike.gasOnTime(), alike.gasOffTime()));
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
     * @param orifices the best one for each set-up's hose, in the same order
     * @param assumptions every default that was used
     * @param cautions what to look at
     */
    public record Comparison(
            SetUpComparison compared,
            List<BestOrifice> orifices,
            List<Assumption> assumptions,
            List<Caution> cautions) {}

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
        SetUpComparison compared = SetUpComparison.of(duty, named, gasPrice, earlier.starts()::of);
        List<Caution> cautions = new ArrayList<>();
        for (ComparedSetUp setUp : compared.setUps()) {
            cautions.addAll(GasCautions.of(setUp.filled(), Optional.of("\"" + setUp.name() + "\"")));
        }
        cautions.addAll(FrameCautions.always());
        List<BestOrifice> orifices =
                named.stream().map(setUp -> BestOrifice.of(setUp.setUp())).toList();
        return new Comparison(compared, orifices, assumptions.list(), cautions);
    }
}
