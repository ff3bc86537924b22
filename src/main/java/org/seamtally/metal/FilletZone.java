package org.seamtally.metal;

/**
 * Zones of a fillet around a tube by dihedral angle, and the leg that AWS D1.1's tubular clause for T-, Y- and
 * K-connections asks for in each, as a multiple of the thinner wall, from memory.
 */
public enum FilletZone {
    /** Below 60°: the root may not be reached. The clause takes these legs, or 1.4 walls and the loss at the root. */
    HEEL(60, 1.5, 1.5, 1.5),
    /** 60° to 100°. */
    SIDE(100, 1.0, 1.4, 1.5),
    /** Over 100° to 110°. */
    OPEN_TO_110(110, 1.1, 1.6, 1.75),
    /** Over 110° to 120°. */
    OPEN_TO_120(120, 1.2, 1.8, 2.0),
    /** Over 120°: the clause asks for a bevelled edge, no fillet. */
    BEVELLED(180);

    private final double end;
    private final double[] legs;

    FilletZone(double end, double... legs) {
        this.end = end;
        this.legs = legs;
    }

    /** The throat that the clause lets a designer count on. */
    public enum Throat {
        SEVEN_TENTHS_OF_WALL(0.7),
        WALL(1.0),
        OVER_WALL(1.07);

        private final double ofWall;

        Throat(double ofWall) {
            this.ofWall = ofWall;
        }

        /** The throat as a multiple of the thinner wall. */
        public double ofWall() {
            return ofWall;
        }
    }

    /**
     * The zone of an angle.
     *
     * @param dihedral rad, above 0, at most π
     */
    public static FilletZone of(double dihedral) {
        double degrees = degrees(dihedral);
        if (degrees < HEEL.end) {
            return HEEL;
        }
        for (FilletZone zone : new FilletZone[] {SIDE, OPEN_TO_110, OPEN_TO_120}) {
            if (degrees <= zone.end) {
                return zone;
            }
        }
        return BEVELLED;
    }

    /** An angle in degrees, to 9 decimals: 100°, once in radians, is 100° again only to the last bits. */
    static double degrees(double radians) {
        return Math.rint(Math.toDegrees(radians) * 1e9) / 1e9;
    }

    /** Where the zone starts, degrees. */
    public double from() {
        return this == HEEL ? 0 : values()[ordinal() - 1].end;
    }

    /** Where the zone ends, degrees. */
    public double to() {
        return end;
    }

    /** Whether the clause takes a fillet there at all. */
    public boolean takesFillet() {
        return this != BEVELLED;
    }

    /**
     * The leg asked for, as a multiple of the thinner wall.
     *
     * @throws IllegalArgumentException where the clause asks for a bevelled edge instead
     */
    public double leg(Throat throat) {
        if (!takesFillet()) {
            throw new IllegalArgumentException("over 120° a bevelled edge is asked for, no fillet");
        }
        return legs[throat.ordinal()];
    }
}
