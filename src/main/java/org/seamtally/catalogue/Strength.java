package org.seamtally.catalogue;

import java.util.OptionalDouble;

/** Strengths as the tables write them, each row in the unit of its own standard. */
final class Strength {

    /** 1000 lbf over one square inch, exact by the definitions of the pound-force and the inch. */
    private static final double PASCALS_A_KSI = 4448.2216152605 / 6.4516e-4;

    private Strength() {}

    /**
     * Pa; empty where the figure is.
     *
     * @param figure in {@code unit}
     * @param unit {@code ksi} or {@code MPa}
     */
    static OptionalDouble pascals(OptionalDouble figure, String unit) {
        double factor = pascalsA(unit);
        return figure.isEmpty() ? figure : OptionalDouble.of(figure.getAsDouble() * factor);
    }

    private static double pascalsA(String unit) {
        if (unit.equals("ksi")) {
            return PASCALS_A_KSI;
        }
        if (unit.equals("MPa")) {
            return 1e6;
        }
        throw new IllegalArgumentException("no strength is given in \"" + unit + "\"");
    }
}
