package org.seamtally.seam;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A root line that counts at how many places it is asked for. The sums along a closed one ask for evenly spaced places, each
 * once; what comes after them soon asks for one that is known or stands between, and that ends the sums.
 */
final class CountedLine implements RootLine {

    /** More steps round a line than its sums ever take, a power of two as theirs are. */
    private static final int FINEST = 8192;

    private final List<Stretch> stretches;
    private final List<Station> corners;
    private final Set<Double> asked = new HashSet<>();
    private int places;
    private int forSums = -1;

    CountedLine(RootLine line) {
        stretches = line.stretches().stream().map(this::counted).toList();
        corners = line.corners();
    }

    private Stretch counted(Stretch stretch) {
        return new Stretch() {
            @Override
            public double end() {
                return stretch.end();
            }

            @Override
            public boolean closed() {
                return stretch.closed();
            }

            @Override
            public boolean mirrored() {
                return stretch.mirrored();
            }

            @Override
            public Station at(double parameter) {
                boolean fresh = asked.add(parameter);
                if (!(fresh && evenlySpaced(parameter / stretch.end())) && forSums < 0) {
                    forSums = places;
                }
                places++;
                return stretch.at(parameter);
            }
        };
    }

    /** Whether a share of the way is a whole number of {@link #FINEST} steps, but for rounding. */
    private static boolean evenlySpaced(double share) {
        return Math.abs(share * FINEST - Math.rint(share * FINEST)) < 1e-9;
    }

    /** Places for all that was asked. */
    int places() {
        return places;
    }

    /**
     * Places that length and deposit were added up from, those that confirm them included: as many as there are steps, whose
     * number is doubled, and one more.
     */
    int forSums() {
        return Integer.highestOneBit((forSums < 0 ? places : forSums) - 1) + 1;
    }

    @Override
    public List<Stretch> stretches() {
        return stretches;
    }

    @Override
    public List<Station> corners() {
        return corners;
    }
}
