package org.seamtally.preheat;

/** Heat content of carbon steel: EN 1993-1-2:2005, 3.4.1.2, from 20 °C to 600 °C. */
public final class SteelHeat {

    /** Density, kg/m³: EN 1993-1-2:2005, 3.2.2. */
    public static final double DENSITY = 7850;
    /** 0 °C in K. */
    static final double ICE = 273.15;
    /** The upper end of the polynomial, K: 600 °C. */
    public static final double GREATEST_TEMPERATURE = 600 + ICE;

    private SteelHeat() {}

    /**
     * Specific heat: 425 + 7.73·10⁻¹ θ − 1.69·10⁻³ θ² + 2.22·10⁻⁶ θ³, θ in °C.
     *
     * @param temperature K; the standard's range begins at 20 °C, below it the polynomial is run on
     * @return J/(kg K)
     */
    public static double specificHeat(double temperature) {
        double t = temperature - ICE;
        return 425 + t * (0.773 + t * (-1.69e-3 + t * 2.22e-6));
    }

    /**
     * Heat taken up between two temperatures: the integral of the specific heat.
     *
     * @param from K
     * @param to K, at most 600 °C
     * @return J/kg
     */
    public static double content(double from, double to) {
        if (to > GREATEST_TEMPERATURE || from > GREATEST_TEMPERATURE) {
            throw new IllegalArgumentException("the specific heat is known up to 600 °C");
        }
        return integral(to - ICE) - integral(from - ICE);
    }

    private static double integral(double t) {
        return t * (425 + t * (0.773 / 2 + t * (-1.69e-3 / 3 + t * 2.22e-6 / 4)));
    }
}
