package org.seamtally.arc;

/**
 * The balance of energy and melted metal: A_w · v · Q_m = η_a · η_m · U · I, with A_w the melted section (AWS Welding
 * Handbook, 8th edition, volume 1, chapter 2, from memory).
 */
public final class MeltingBalance {

    /**
     * Energy that melts a volume of steel, J/m³: a constant here, a decision of this project. The handbook's
     * (T_m + 273)²/300 000 J/mm³ gives 10.3 to 10.8 for steels.
     */
    public static final double MELTING_ENERGY = 10.5e9;

    private MeltingBalance() {}

    /**
     * How much metal the arc melts, filler and base together.
     *
     * @return m³/s
     */
    public static double meltingRate(ArcSettings arc) {
        return arc.arcEfficiency() * arc.meltingEfficiency() * arc.power() / MELTING_ENERGY;
    }

    /**
     * How long a deposit takes to melt, with the base metal that is melted into it.
     *
     * @param deposit volume of filler deposited, m³
     * @param dilution share of the weld that is base metal, 0 to below 1
     * @return s
     */
    public static double meltingTime(double deposit, double dilution, ArcSettings arc) {
        if (!(dilution >= 0 && dilution < 1)) {
            throw new IllegalArgumentException("a dilution of " + dilution + " is not in [0, 1)");
        }
        return deposit / (1 - dilution) / meltingRate(arc);
    }
}
