package org.seamtally.metal;

/**
 * How many ways the heat can leave a seam: the shape factors of EN 1011-2:2001 table D.1, from memory. A single-run fillet
 * on a T joint has F₂ from 0.45 to 0.67, by its heat input and thickness: the slow end is taken and the fast end is shown
 * beside it, a decision of this project.
 */
public enum SeamShape {
    BEAD_ON_PLATE(1, 1, 1),
    BUTT(0.9, 0.9, 0.9),
    FILLET(0.67, 0.45, 0.67);

    private final double thin;
    private final double thinFast;
    private final double thick;

    SeamShape(double thin, double thinFast, double thick) {
        this.thin = thin;
        this.thinFast = thinFast;
        this.thick = thick;
    }

    /** F₂, two-dimensional heat flow, the slow bound. */
    double thin() {
        return thin;
    }

    /** F₂, two-dimensional heat flow, the fast bound. */
    double thinFast() {
        return thinFast;
    }

    /** F₃, three-dimensional heat flow. */
    double thick() {
        return thick;
    }
}
