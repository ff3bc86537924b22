package org.seamtally.seam;

import java.util.OptionalDouble;

/**
 * The section of a fillet deposit, square to the seam: a triangle on the root with its legs along the two surfaces, and
 * a circular segment on its face.
 *
 * <p>Plane geometry. The root gap lengthens the branch's leg. Past a dihedral angle of 135° a fillet turns into a groove
 * (AWS D1.1 takes fillets in skewed joints from 60° to 135°), and at 180° a flat face would hold no metal at all: there
 * the rise goes over to at least {@link #GROOVE_RISE}, a decision of this project.
 *
 * @param legMain leg on the main member, the plate or the sleeve's end, along its surface, m, positive
 * @param legBranch leg on the branch, m, positive
 * @param rootGap m, 0 to {@link #GREATEST_ROOT_GAP}
 * @param face form of the face
 */
public record DepositSection(double legMain, double legBranch, double rootGap, Face face) {

    /** Widest root gap that is taken, m: AWS D1.1's fit-up clause for fillets (5 mm), from memory. */
    public static final double GREATEST_ROOT_GAP = 5e-3;
    /** A root gap above this, m, is cautioned: AWS D1.1's fit-up clause (1/16 in), from memory. */
    public static final double ROOT_GAP_TO_CAUTION = 1.6e-3;
    /** The widest dihedral angle of a fillet, rad: AWS D1.1, skewed joints, 135°. */
    public static final double WIDEST_FILLET = Math.toRadians(135);
    /** Below this dihedral angle, rad, the root may not be reached: AWS D1.1, skewed joints, 60°. */
    public static final double NARROWEST_FILLET = Math.toRadians(60);
    /** The least rise over face width of a groove's face at 180°, a decision of this project. */
    public static final double GROOVE_RISE = 0.10;

    /** Legs and edges are given in inches or millimetres: equal ones differ in the last bits. */
    private static final double LONGER = 1 + 1e-9;

    /** @throws IllegalArgumentException where a leg is not positive or the gap is not in its range */
    public DepositSection {
        if (!(legMain > 0 && legBranch > 0) || Double.isInfinite(legMain) || Double.isInfinite(legBranch)) {
            throw new IllegalArgumentException("fillet legs " + legMain + " m and " + legBranch + " m");
        }
        if (!(rootGap >= 0 && rootGap <= GREATEST_ROOT_GAP)) {
            throw new IllegalArgumentException("a root gap of " + rootGap + " m is not in 0 to 5 mm");
        }
    }

    /** A fillet of equal legs, m. */
    public static DepositSection ofLeg(double leg, double rootGap, Face face) {
        return new DepositSection(leg, leg, rootGap, face);
    }

    /**
     * The longest leg that counts on an edge, m: at most the edge's thickness, whatever the thickness, a decision of this
     * project (AISC 360 J2.2b, read second-hand, keeps 1/16 in off from 1/4 in on).
     *
     * @param edge thickness of the edge that a leg lies on, m; empty where legs lie on faces only, which bound none
     */
    public static double longestLeg(OptionalDouble edge) {
        return edge.orElse(Double.POSITIVE_INFINITY);
    }

    /** Whether the leg on the main member is longer than its edge lets count. */
    public boolean passes(OptionalDouble edge) {
        return legMain > longestLeg(edge) * LONGER;
    }

    /** What counts of this deposit on an edge: the same root and face on legs no longer than the edge lets count. */
    public DepositSection within(OptionalDouble edge) {
        double longest = longestLeg(edge);
        return new DepositSection(Math.min(legMain, longest), Math.min(legBranch, longest), rootGap, face);
    }

    /** Rise over face width at a place, negative where hollow: as asked for up to 135°, then towards a groove's. */
    double riseAt(double dihedral) {
        double asked = face.signedRise();
        if (dihedral <= WIDEST_FILLET) {
            return asked;
        }
        double share = (dihedral - WIDEST_FILLET) / (Math.PI - WIDEST_FILLET);
        return asked + (Math.max(asked, GROOVE_RISE) - asked) * share;
    }

    /** Width of the face, m: the chord between the toes. */
    double faceWidth(double cosDihedral) {
        return width(legMain, legBranch + rootGap, cosDihedral);
    }

    private static double width(double a, double b, double cosDihedral) {
        return Math.sqrt(a * a + b * b - 2 * a * b * cosDihedral);
    }

    /** Area at a place of the seam, a groove's fuller face past 135° included, m². */
    double wholeArea(Station at) {
        double c = faceWidth(at.cosDihedral());
        return triangle(at) + FaceSegment.of(riseAt(at.dihedral())).area() * c * c;
    }

    /** The segment on a face that rises as asked for. */
    FaceSegment asked() {
        return FaceSegment.of(face.signedRise());
    }

    /**
     * What is deposited between this place and the next, m³ by the parameter: A ds − M·dT.
     *
     * @param asked {@link #asked}, worked out once for many places
     */
    double deposit(Station at, FaceSegment asked) {
        double triangle = triangle(at);
        return triangle * (at.speed() - cornersTurn(at) / 3) + segmentDeposit(at, asked);
    }

    /**
     * What a groove's fuller face adds to {@link #deposit} past 135°, m³ by the parameter.
     *
     * @param asked as there
     */
    double grooveDeposit(Station at, FaceSegment asked) {
        return segmentDeposit(at, FaceSegment.of(riseAt(at.dihedral())).less(asked));
    }

    private double triangle(Station at) {
        return legMain * (legBranch + rootGap) * at.sinDihedral() / 2;
    }

    /** (z_r a + z_b b)·dT: a third of it turns the triangle's centroid, half of it the face's middle. */
    private double cornersTurn(Station at) {
        double alongBranch = at.cosDihedral() * at.turnInMain() + at.sinDihedral() * at.turnOffMain();
        return legMain * at.turnInMain() + (legBranch + rootGap) * alongBranch;
    }

    /** The segment's A ds − M·dT; its centroid stands on the face's normal at mid chord. */
    private double segmentDeposit(Station at, FaceSegment segment) {
        double b = legBranch + rootGap;
        double c = faceWidth(at.cosDihedral());
        // outward normal of the face: z_b sin ψ along a, z_r − z_b cos ψ along the main member's normal, over c
        double normalTurn =
                (b * at.sinDihedral() * at.turnInMain() + (legMain - b * at.cosDihedral()) * at.turnOffMain()) / c;
        double area = segment.area() * c * c;
        return area * (at.speed() - cornersTurn(at) / 2) - segment.moment() * c * c * c * normalTurn;
    }

    /**
     * Effective throat: the shortest distance from the root to the face, without what a gap or a bulge would add, less
     * what a hollow takes away.
     *
     * @param dihedral rad, 0 to π
     * @return m; negative where a hollow face would cut through the root
     */
    public double effectiveThroat(double dihedral) {
        double cos = Math.cos(dihedral);
        // beside a much longer leg on the main member a gap narrows the face of an acute fillet: the throat, which goes
        // with one over that width, must not gain by it
        double c = Math.max(faceWidth(cos), width(legMain, legBranch, cos));
        return legMain * legBranch * Math.sin(dihedral) / c - face.hollow() * c;
    }
}
