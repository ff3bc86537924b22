package org.seamtally.seam;

/**
 * One of the parts that a joint joins.
 *
 * <p>The footprint is the length or width of the part that the joint itself takes up; heat runs away from there.
 */
public sealed interface Member permits Member.Tube, Member.Plate {

    /** Wall or thickness, m. */
    double wall();

    /**
     * A round tube.
     *
     * @param outsideDiameter m
     * @param wall m, above 0 and below half the diameter
     * @param footprint length along the tube that the joint takes up, m; 0 where the tube ends in the joint
     * @param waysOut 1 where the tube ends in the joint, 2 where it runs through
     */
    record Tube(double outsideDiameter, double wall, double footprint, int waysOut) implements Member {

        /** @throws IllegalArgumentException where there is no such tube */
        public Tube {
            if (!(outsideDiameter > 0) || !(wall > 0 && wall < outsideDiameter / 2)) {
                throw new IllegalArgumentException(
                        "no tube has an outside diameter of " + outsideDiameter + " m and a wall of " + wall + " m");
            }
            if (!(footprint >= 0) || waysOut < 1 || waysOut > 2) {
                throw new IllegalArgumentException("footprint " + footprint + " m, ways out " + waysOut);
            }
        }

        /** Area of steel across the tube, m². */
        public double steelArea() {
            return Math.PI * (outsideDiameter - wall) * wall;
        }
    }

    /**
     * A flat part.
     *
     * @param wall thickness, m
     * @param footprint length that the joint takes up, m
     * @param atEdge whether the joint is at its edge, so that heat spreads into half a disc
     */
    record Plate(double wall, double footprint, boolean atEdge) implements Member {

        /** @throws IllegalArgumentException where there is no such plate */
        public Plate {
            if (!(wall > 0) || !(footprint >= 0)) {
                throw new IllegalArgumentException("thickness " + wall + " m, footprint " + footprint + " m");
            }
        }
    }
}
