package org.seamtally.frame;

import java.util.List;
import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.Restraint;
import org.seamtally.metal.Rod;
import org.seamtally.metal.SeamShape;
import org.seamtally.metal.SteelReview;

/**
 * A steel to be reviewed with its fillers, as given; null where left out.
 *
 * @param base the tube
 * @param wall the thicker wall at the joint, m; needed
 * @param dilution share of the weld that is base metal
 * @param fillers 1 to {@link SteelReview#MOST_FILLERS}
 * @param arc current, voltage, travel speed and arc efficiency
 * @param hydrogen diffusible hydrogen, mL/100 g
 * @param startTemperature of the metal, K
 * @param restraint how far the parts are held
 * @param shape of the seam
 */
public record GivenReview(
        BaseMetal base,
        double wall,
        Double dilution,
        List<Rod> fillers,
        GivenArc arc,
        Double hydrogen,
        Double startTemperature,
        Restraint restraint,
        SeamShape shape) {

    /** Copies the list. */
    public GivenReview {
        fillers = List.copyOf(fillers);
    }
}
