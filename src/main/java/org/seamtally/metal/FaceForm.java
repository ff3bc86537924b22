package org.seamtally.metal;

/** The form of a fillet's face. */
public enum FaceForm {
    CONVEX(0.25),
    FLAT(0),
    CONCAVE(0.10);

    private final double greatestRise;

    FaceForm(double greatestRise) {
        this.greatestRise = greatestRise;
    }

    /** The greatest rise over face width that is taken: a decision of this project; a deeper hollow leaves no metal. */
    double greatestRise() {
        return greatestRise;
    }
}
