package org.seamtally.catalogue;

/**
 * A size of round tube as it is bought.
 *
 * @param designation as it is written on an order, such as {@code 1-1/2 x 0.095 in}
 * @param outsideDiameter m, above 0
 * @param wall m, above 0, below half the outside diameter
 * @param source where the size is named
 * @param status how well that source is known
 */
public record TubeSize(String designation, double outsideDiameter, double wall, String source, Status status) {

    /** @throws IllegalArgumentException where the wall leaves no bore */
    public TubeSize {
        if (!(wall > 0 && 2 * wall < outsideDiameter && outsideDiameter < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    designation + ": a wall of " + wall + " m in " + outsideDiameter + " m is no tube's");
        }
    }
}
