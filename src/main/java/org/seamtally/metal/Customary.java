package org.seamtally.metal;

/** The inch and the ksi, in which American standards print their tables and in which a shop speaks. */
final class Customary {

    /** Exact, by definition. */
    static final double METRES_AN_INCH = 0.0254;

    /** 1000 lbf over one square inch, exact by the definitions of the pound-force and the inch. */
    static final double PASCALS_A_KSI = 4448.2216152605 / (METRES_AN_INCH * METRES_AN_INCH);

    private Customary() {}

    static double inches(double metres) {
        return metres / METRES_AN_INCH;
    }

    static double ksi(double pascals) {
        return pascals / PASCALS_A_KSI;
    }
}
