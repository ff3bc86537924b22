package org.seamtally.seam;

/**
 * The form of a fillet's face.
 *
 * @param form flat, convex or concave
 * @param rise convexity or concavity over face width: 0 to {@link #GREATEST_CONVEX} or {@link #GREATEST_CONCAVE}; 0
 *     where flat
 */
public record Face(Form form, double rise) {

    /** Rise of a convex face at most, a decision of this project: a quarter is half a circle's worth of bulge already. */
    public static final double GREATEST_CONVEX = 0.25;
    /** Fall of a concave face at most, a decision of this project: a deeper hollow leaves no metal at wide dihedrals. */
    public static final double GREATEST_CONCAVE = 0.10;

    /** A plane face. */
    public static final Face FLAT = new Face(Form.FLAT, 0);

    /** Which way the face bulges. */
    public enum Form {
        FLAT,
        CONVEX,
        CONCAVE;

        /** The greatest rise that a face of this form may have, over its width. */
        public double greatestRise() {
            return switch (this) {
                case FLAT -> 0;
                case CONVEX -> GREATEST_CONVEX;
                case CONCAVE -> GREATEST_CONCAVE;
            };
        }

        /** The word that requests use. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** @throws IllegalArgumentException where the rise is not one that the form may have */
    public Face {
        if (!(rise >= 0 && rise <= form.greatestRise())) {
            throw new IllegalArgumentException(
                    "a " + form.word() + " face's rise is 0 to " + form.greatestRise() + " of its width, not " + rise);
        }
    }

    /** The rise, negative where the face is hollow. */
    double signedRise() {
        return form == Form.CONCAVE ? -rise : rise;
    }

    /** How far the face falls short of its chord, over face width: 0 unless hollow. */
    double hollow() {
        return form == Form.CONCAVE ? rise : 0;
    }
}
