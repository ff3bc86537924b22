package org.seamtally.frame;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamtally.arc.FillerUse;
import org.seamtally.gas.GasUse;
import org.seamtally.preheat.PreheatUse;

/** Puts a frame's joints together. Pure: the same job gives the same estimate. */
public final class FrameEstimator {

    private static final String REQUEST = "frame.joints";

    private final EarlierWork earlier;

    /** @param earlier what was computed for earlier requests; only speed depends on it */
    public FrameEstimator(EarlierWork earlier) {
        this.earlier = earlier;
    }

    /**
     * Estimates a frame.
     *
     * @throws UnworkableException with every problem that only shows once defaults are filled in
     */
    public FrameEstimate estimate(FrameJob job) {
        return estimate(job, () -> {});
    }

    /**
     * The same for whoever has a limit to keep.
     *
     * @param beforeJoint run before each joint; what it throws ends the estimate
     */
    public FrameEstimate estimate(FrameJob job, Runnable beforeJoint) {
        Assumptions assumptions = new Assumptions();
        Defaults defaults = new Defaults(assumptions);
        Known known = new Known(earlier, true);
        int quantity = defaults.quantity(job.quantity());
        double operatingFactor = defaults.operatingFactor(job.labour());
        double fitUp = defaults.fitUpPerJoint(job.labour());
        double setUp = defaults.setUpPerOrder(job.labour()) / quantity;
        List<JointEstimate> joints = new ArrayList<>(job.joints().size());
        Set<Problem> problems = new LinkedHashSet<>();
        double requestLeak = 0;
        for (int i = 0; i < job.joints().size(); i++) {
            beforeJoint.run();
            GivenJoint given = job.joints().get(i);
            JointWork work = new JointWork(given, job.settings(), place(given, i), assumptions, known);
            try {
                joints.add(estimate(work, given, operatingFactor, fitUp, job.prices()));
                requestLeak = Math.max(requestLeak, work.leak());
            } catch (UnworkableException e) {
                problems.addAll(e.problems());
                problems.addAll(work.problems());
            }
        }
        if (!problems.isEmpty()) {
            throw new UnworkableException(List.copyOf(problems));
        }
        // while the order is set up the leakiest set-up in use is taken to be on
        Totals perFrame = Totals.of(joints).withSetUp(setUp, GasUse.leaking(requestLeak, setUp));
        Totals forQuantity = perFrame.times(quantity);
        List<Caution> cautions = new ArrayList<>();
        cautions.addAll(GasCautions.ofFrame(known));
        Totals advised = AdvisedForOrder.totals(joints, quantity);
        AdvisedForOrder.caution(joints, advised, forQuantity, quantity, job.prices())
                .ifPresent(cautions::add);
        cautions.addAll(FrameCautions.always());
        cautions.addAll(FrameCautions.ofShop());
        Optional<Cost> cost = job.prices().map(prices -> Cost.of(forQuantity, quantity, prices, cautions));
        return new FrameEstimate(
                Optional.ofNullable(job.name()),
                quantity,
                joints,
                perFrame,
                forQuantity,
                cost,
                assumptions.list(),
                Basis.ofFrame(joints.stream().anyMatch(joint -> joint.preheat().isPresent()), cost.isPresent()),
                cautions);
    }

    private static Assumptions.Place place(GivenJoint given, int index) {
        return new Assumptions.Place(
                REQUEST + "[" + index + "]",
                REQUEST + "[*]",
                given.mark() != null ? given.mark() : GivenJoint.markOf(index));
    }

    private static JointEstimate estimate(
            JointWork work, GivenJoint given, double operatingFactor, double fitUp, Optional<Prices> prices) {
        double arcOn = work.arc().arcOn();
        double access = work.access();
        Optional<PreheatUse> preheat = work.preheat();
        Labour labour = new Labour(
                arcOn,
                arcOn * (1 / operatingFactor - 1) * access,
                fitUp,
                0,
                preheat.map(PreheatUse::time).orElse(0.0));
        List<Caution> cautions = new ArrayList<>(work.cautions());
        JointMetal metal = work.metal(prices, cautions);
        cautions.addAll(metal.cautions());
        // named in this order, so that what was assumed is told in it
        String mark = work.mark();
        int count = work.count();
        int tacks = work.tacks();
        int segments = work.segments();
        FillerUse filler = work.filler();
        GasUse gas = work.gas(labour.total());
        return new JointEstimate(
                mark,
                count,
                work.procedure(),
                work.joint(),
                tacks,
                segments,
                work.arcSettings(),
                work.welderSettings(),
                work.seam(),
                filler,
                work.arc(),
                gas,
                work.start().steady().storedGas(),
                preheat,
                labour,
                metal.fillet(),
                metal.advisedPreheat(),
                cautions);
    }

    /** The work on one joint that is asked about by itself. */
    public Single single(GivenJoint joint, Settings settings) {
        return new Single(joint, settings, new Known(earlier), false);
    }

    /** The same for a joint to be preheated: where no temperature is given, the advised one is taken. */
    public Single preheated(GivenJoint joint, Settings settings) {
        return new Single(joint.asPreheated(), settings, new Known(earlier), true);
    }

    /** One joint by itself, with the defaults that were used. */
    public static final class Single {

        private final Assumptions assumptions = new Assumptions();
        private final JointWork work;

        private Single(GivenJoint joint, Settings settings, Known known, boolean adviceStands) {
            String mark = joint.mark() != null ? joint.mark() : GivenJoint.markOf(0);
            work = new JointWork(
                    joint, settings, new Assumptions.Place("joint", "joint", mark), assumptions, known, adviceStands);
        }

        /** Its parts, each computed when asked for. */
        public JointWork work() {
            return work;
        }

        /** The defaults that the parts asked for so far have used. */
        public List<Assumption> assumptions() {
            return assumptions.list();
        }
    }
}
