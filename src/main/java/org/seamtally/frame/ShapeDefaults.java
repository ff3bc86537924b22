package org.seamtally.frame;

import static org.seamtally.frame.Assumptions.measured;
import static org.seamtally.frame.Assumptions.words;

import java.util.OptionalDouble;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;

/** What is taken for a joint's sizes that were left out, noted for that joint. */
public final class ShapeDefaults {

    private final Assumptions assumptions;
    private final Assumptions.Place place;

    ShapeDefaults(Assumptions assumptions, Assumptions.Place place) {
        this.assumptions = assumptions;
        this.place = place;
    }

    /** The angle, or square, rad. */
    public double angle(Double given) {
        return of(given, "angle", Dimension.ANGLE, Math.PI / 2, "square unless the drawing says otherwise");
    }

    /** The offset, or none, m. */
    public double offset(Double given) {
        return of(given, "offset", Dimension.LENGTH, 0, "axes cross unless the drawing says otherwise");
    }

    /**
     * The section of the deposit.
     *
     * @param thinnerWall of the members, m
     * @param edge thickness of an edge that a leg lies on, m
     */
    public DepositSection fillet(GivenFillet given, double thinnerWall, OptionalDouble edge) {
        double usual = Math.min(Defaults.LEG_OVER_WALL * thinnerWall, DepositSection.longestLeg(edge));
        double leg = of(
                given.leg(),
                "fillet.leg",
                Dimension.LENGTH,
                usual,
                "1.25 times the thinner wall, at most an edge's thickness: a decision of this project; AWS D1.1's"
                        + " tubular clause asks for 1.0 to 1.5 by zone (from memory)");
        Face face = given.face();
        if (face == null) {
            assumptions.note(place, "fillet.face", words("flat"), "a decision of this project");
            face = Face.FLAT;
        }
        double gap =
                of(given.rootGap(), "fillet.rootGap", Dimension.LENGTH, 0, "coped to fit: a decision of this project");
        return DepositSection.ofLeg(leg, gap, face);
    }

    private double of(Double given, String field, Dimension dimension, double fallback, String because) {
        if (given != null) {
            return given;
        }
        assumptions.note(place, field, measured(dimension, fallback), because);
        return fallback;
    }
}
