package org.seamtally.metal;

/** Welding conditions that the tests share. */
final class Tubes {

    /** 90 A, 11 V, 4 in/min, J/m. */
    static final double ARC_ENERGY = 90 * 11 / (4 * 0.0254 / 60);

    private Tubes() {}

    /** 0.095 in wall, 30 % dilution, 3 mL/100 g, 20 °C, a fillet. */
    static WeldingConditions thin(Restraint restraint) {
        return of(2.413e-3, 3, restraint);
    }

    static WeldingConditions of(double wall, double hydrogen, Restraint restraint) {
        return new WeldingConditions(wall, 0.30, ARC_ENERGY, hydrogen, 293.15, restraint, SeamShape.FILLET);
    }
}
