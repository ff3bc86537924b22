package org.seamtally.frame;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.seamtally.gas.SetUp;
import org.seamtally.gas.StartTransient;
import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.metal.Rod;
import org.seamtally.metal.SteelReview;
import org.seamtally.metal.WeldedPair;
import org.seamtally.metal.WeldingConditions;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;
import org.seamtally.seam.SeamIntegral;

/** What has been computed already for this request: the same joint or set-up twice is worked out once. */
final class Known {

    private final Map<Joint, Seam> seams = new HashMap<>();
    private final Map<Joint, SeamIntegral.ByZones> measured = new HashMap<>();
    private final Map<SetUp, StartTransient> starts = new LinkedHashMap<>();
    private final Map<SetUp, Set<String>> users = new HashMap<>();
    private final Map<Paired, WeldedPair> pairs = new HashMap<>();
    private final Map<Reviewed, SteelReview> reviews = new HashMap<>();
    private final Map<Joint, FilletAdequacy> fillets = new HashMap<>();
    private final EarlierWork earlier;
    private final boolean zones;

    private record Paired(BaseMetal base, Rod rod, double dilution) {}

    /** A pair is itself alone: there is one of each. */
    private record Reviewed(WeldedPair pair, WeldingConditions conditions) {}

    /** @param earlier what other requests have had computed */
    Known(EarlierWork earlier) {
        this(earlier, false);
    }

    /** @param zones whether fillets will be asked for */
    Known(EarlierWork earlier, boolean zones) {
        this.zones = zones;
        this.earlier = earlier;
    }

    Seam seam(Joint joint) {
        if (zones && joint.curve().isPresent()) {
            return measured(joint).seam();
        }
        return seams.computeIfAbsent(joint, Joint::seam);
    }

    /** A seam whose fillet will be held against the code's rule is added up with its zones, in one pass. */
    private SeamIntegral.ByZones measured(Joint joint) {
        return measured.computeIfAbsent(joint, earlier.seams()::of);
    }

    /**
     * The review of one rod on one base.
     *
     * @throws IllegalArgumentException where the alloy is too high for the formulas
     */
    SteelReview review(BaseMetal base, Rod rod, WeldingConditions conditions) {
        WeldedPair pair = pairs.computeIfAbsent(
                new Paired(base, rod, conditions.dilution()),
                key -> WeldedPair.of(key.base(), key.rod(), key.dilution()));
        return reviews.computeIfAbsent(new Reviewed(pair, conditions), key -> SteelReview.of(pair, conditions));
    }

    /** The fillet of a joint against the code's rule; empty for a plug. */
    Optional<FilletAdequacy> fillet(Joint joint) {
        return joint.curve()
                .map(line -> fillets.computeIfAbsent(joint, key -> FilletAlongSeam.check(joint, measured(joint))));
    }

    /** The starts of all set-ups in use, in the order they were first met. */
    Collection<StartTransient> starts() {
        return starts.values();
    }

    /** Marks of the joints that are welded with a set-up. */
    List<String> marks(SetUp setUp) {
        return List.copyOf(users.getOrDefault(setUp, Set.of()));
    }

    /** The start of a joint's set-up. */
    StartTransient start(SetUp setUp, String mark) {
        users.computeIfAbsent(setUp, unused -> new LinkedHashSet<>()).add(mark);
        return start(setUp);
    }

    private StartTransient start(SetUp setUp) {
        return starts.computeIfAbsent(setUp, earlier.starts()::of);
    }
}
