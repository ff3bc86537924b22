package org.seamtally.page;

import java.util.List;

/**
 * A frame to start from.
 *
 * @param file its name among the page's resources, which are the sample jobs
 * @param title what the reader picks it by
 * @param units that it is written in: {@code si} or {@code us}
 */
public record FrameExample(String file, String title, String units) {

    static final List<FrameExample> ALL = List.of(
            new FrameExample("trail-buggy-rear-bay.json", "Trail buggy, rear bay (inches)", "us"),
            new FrameExample("hill-climb-buggy-roll-structure.json", "Hill-climb buggy, roll structure (inches)", "us"),
            new FrameExample("garden-cart-trailer.json", "Garden cart trailer (millimetres)", "si"),
            new FrameExample("boat-cradle-equal-tubes.json", "Rowing-boat cradle, equal tubes (inches)", "us"),
            new FrameExample("pole-trailer-lattice-beam.json", "Pole trailer, lattice beam (millimetres)", "si"));
}
