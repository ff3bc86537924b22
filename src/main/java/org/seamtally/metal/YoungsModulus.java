package org.seamtally.metal;

/**
 * Stiffness: the same for every steel here, whatever its strength, so that a stronger tube of the same section bends as
 * far. It follows from the bonds of iron, which a few per cent of alloy or a heat treatment hardly touch. Handbook range,
 * from memory.
 */
public final class YoungsModulus {

    /** Pa. */
    public static final double LEAST = 200e9;

    /** Pa. */
    public static final double GREATEST = 210e9;

    /** Why strength does not change it, in words for the user. */
    public static final String WHY =
            "Every carbon and low-alloy steel has a Young's modulus of 200 to 210 GPa: a stronger"
                    + " steel or a heat treatment does not make a tube of the same section stiffer.";

    private YoungsModulus() {}
}
