package org.seamtally.preheat;

/** Heat given off by hot steel in still air: grey radiation (Stefan and Boltzmann) and a constant film of air. */
final class HeatLoss {

    /** Emissivity of oxidised steel: 0.8, handbooks, from memory; fixed here by a decision of this project. */
    static final double EMISSIVITY = 0.8;
    /** Heat transfer to still air, W/(m² K): the upper end of handbooks' 5 to 10, a decision of this project. */
    static final double STILL_AIR = 10;
    /** Conductivity of low-alloy steel, W/(m K), a decision of this project; EN 1993-1-2 has 49 at 150 °C for carbon steel. */
    static final double CONDUCTIVITY = 40;
    /** W/(m² K⁴): CODATA 2018, exact to the digits given. */
    static final double STEFAN_BOLTZMANN = 5.670374419e-8;

    private HeatLoss() {}

    /**
     * @param temperature K
     * @param ambient K
     * @return W/m²
     */
    static double flux(double temperature, double ambient) {
        return EMISSIVITY * STEFAN_BOLTZMANN * (Math.pow(temperature, 4) - Math.pow(ambient, 4))
                + STILL_AIR * (temperature - ambient);
    }
}
