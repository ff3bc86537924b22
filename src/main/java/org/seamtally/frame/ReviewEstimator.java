package org.seamtally.frame;

import java.util.List;
import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.SteelReview;
import org.seamtally.metal.WeldingConditions;

/** Reviews a steel with its fillers, defaults filled in. */
public final class ReviewEstimator {

    /**
     * A review and what it was made with.
     *
     * @param review the tube and its fillers, best first
     * @param arc the arc, defaults filled in
     * @param conditions how it is welded, defaults filled in
     * @param assumptions every default that was used
     */
    public record Reviewed(
            SteelReview review, SeamArc arc, WeldingConditions conditions, List<Assumption> assumptions) {

        /** Copies the list. */
        public Reviewed {
            assumptions = List.copyOf(assumptions);
        }
    }

    /**
     * The arc along a seam that is asked about without a joint.
     *
     * @param current A
     * @param voltage V
     * @param travelSpeed m/s
     * @param arcEfficiency share of the arc's energy that reaches the work
     */
    public record SeamArc(double current, double voltage, double travelSpeed, double arcEfficiency) {

        /** U·I/v, J/m. */
        public double arcEnergy() {
            return voltage * current / travelSpeed;
        }

        /** Arc efficiency times that, J/m. */
        public double heatInput() {
            return arcEfficiency * arcEnergy();
        }
    }

    /**
     * Reviews.
     *
     * @throws UnworkableException where the alloy is too high for the formulas
     */
    public Reviewed review(GivenReview given) {
        Assumptions assumptions = new Assumptions();
        Defaults defaults = new Defaults(assumptions);
        BaseMetal base = defaults.base(given.base(), "base");
        SeamArc arc = defaults.seamArc(given.arc(), given.wall());
        WeldingConditions conditions = new WeldingConditions(
                given.wall(),
                defaults.dilution(given.dilution(), "dilution"),
                arc.arcEnergy(),
                defaults.hydrogen(given.hydrogen(), "hydrogen"),
                defaults.startTemperature(given.startTemperature()),
                defaults.restraint(given.restraint(), "restraint"),
                defaults.shape(given.shape()));
        try {
            return new Reviewed(SteelReview.of(base, given.fillers(), conditions), arc, conditions, assumptions.list());
        } catch (IllegalArgumentException e) {
            // all else was checked before: what is left is an alloy that a formula does not take
            throw new UnworkableException(List.of(new Problem("base", "alloy-too-high", e.getMessage())));
        }
    }
}
