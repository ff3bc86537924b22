package org.seamtally.seam;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A joint to be welded: its root line, its deposit and the parts it joins. Arc, preheat and metal read joints through
 * this interface only.
 */
public sealed interface Joint permits TubeToTube, TubeToPlate, PlateFillet, TubeSleeve, Plug {

    /** The root line; empty for a plug, which fills a hole and has no length. */
    Optional<RootLine> curve();

    /** The section of the deposit along the root line; empty for a plug. */
    Optional<DepositSection> section();

    /** The parts joined, the branch, sleeve or upper plate first. */
    List<Member> members();

    /** Tacks and arc-on stretches where the request gives none. */
    Practice usualPractice();

    /** Length, deposit and the run of the dihedral angle. */
    default Seam seam() {
        return SeamIntegral.along(curve().orElseThrow(), section().orElseThrow());
    }

    /** Thickness of an edge that a leg lies on, m: it bounds the leg, {@link DepositSection#longestLeg}. Empty where legs lie on faces only. */
    default OptionalDouble edge() {
        return OptionalDouble.empty();
    }

    /** The thinner of the walls joined, m. */
    default double thinnerWall() {
        return members().stream().mapToDouble(Member::wall).min().orElseThrow();
    }

    /** The thicker of the walls joined, m. */
    default double thickerWall() {
        return members().stream().mapToDouble(Member::wall).max().orElseThrow();
    }

    /**
     * What is usual in a shop, common practice, no source.
     *
     * @param tacks number of tack welds
     * @param segments number of arc-on stretches that make up the seam
     */
    record Practice(int tacks, int segments) {

        /** A tube's end all round: tacked in four places and welded in quarters. */
        static final Practice TUBE = new Practice(4, 4);
        /** A sleeve: three tacks, two halves. */
        static final Practice SLEEVE = new Practice(3, 2);
        /** A short straight seam: a tack at each end, one run. */
        static final Practice PLATE = new Practice(2, 1);
        /** A plug: one puddle. */
        static final Practice PLUG = new Practice(0, 1);
    }
}
