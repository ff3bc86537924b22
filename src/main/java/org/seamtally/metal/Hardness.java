package org.seamtally.metal;

import java.util.List;
import java.util.stream.Stream;
import org.seamtally.catalogue.Composition;

/**
 * Peak hardness of the base metal beside the seam by two published correlations, side by side. Neither is a measurement;
 * the spread says how far they can be trusted.
 *
 * @param maynier each structure's hardness by Maynier et al. 1978
 * @param yurioka the zone's hardness by Yurioka et al. 1987
 */
public record Hardness(Maynier maynier, Yurioka yurioka) {

    /**
     * Computes both.
     *
     * @param steel analysis of the base metal
     * @param coolingTime t₈₅, s, above 0
     * @throws IllegalArgumentException where the cooling time cannot be or the alloy is too high for the formulas
     */
    public static Hardness of(Composition steel, double coolingTime) {
        return new Hardness(Maynier.of(steel, coolingTime), Yurioka.of(steel, coolingTime));
    }

    /**
     * HV by Maynier's hardnesses of martensite and bainite, mixed by the martensite share of Yurioka et al.: a decision of
     * this project, so that both answer the same question.
     */
    public double byMaynier() {
        double share = yurioka.martensiteShare();
        return share * maynier.martensite() + (1 - share) * maynier.bainite();
    }

    /** HV by Yurioka et al. */
    public double byYurioka() {
        return yurioka.hardness();
    }

    /** The lower of the two, HV. */
    public double least() {
        return Math.min(byMaynier(), byYurioka());
    }

    /** The higher of the two, HV. */
    public double greatest() {
        return Math.max(byMaynier(), byYurioka());
    }

    /** How far the two are apart, HV. */
    public double spread() {
        return greatest() - least();
    }

    /** Share of martensite beside the seam, 0 to 1, by Yurioka et al. */
    public double martensiteShare() {
        return yurioka.martensiteShare();
    }

    /** What lies outside the range of either. */
    public List<String> outside() {
        return Stream.concat(
                        maynier.outside().stream().map(text -> "Maynier et al.: " + text),
                        yurioka.outside().stream().map(text -> "Yurioka et al.: " + text))
                .toList();
    }
}
