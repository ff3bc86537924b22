package org.seamtally.seam;

import java.util.Optional;

/**
 * What a weld comes to. A plug has a volume and no length.
 *
 * @param length of the root line, m; 0 for a plug
 * @param depositVolume m³
 * @param course how the dihedral angle and the throat run along it; empty for a plug
 */
public record Seam(double length, double depositVolume, Optional<Course> course) {

    /** Whether this is a plug: volume, but no length to divide it by. */
    public boolean plug() {
        return course.isEmpty();
    }

    /** Volume over length, m²; 0 for a plug. */
    public double meanSection() {
        return plug() ? 0 : depositVolume / length;
    }

    /** Seam of a plug. */
    static Seam ofPlug(double volume) {
        return new Seam(0, volume, Optional.empty());
    }

    /**
     * The run of the dihedral angle along a seam.
     *
     * @param leastDihedral rad
     * @param greatestDihedral rad
     * @param leastThroat least effective throat where the dihedral is at most 135°, m; empty where it is wider all along
     * @param grooveShare share of the length with a dihedral above 135°, 0 to 1
     */
    public record Course(
            double leastDihedral, double greatestDihedral, java.util.OptionalDouble leastThroat, double grooveShare) {}
}
