package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.Restraint;

/**
 * Base steel and how it is welded as given; null where left out.
 *
 * @param base the steel of the tubes
 * @param dilution share of the weld that is base metal
 * @param hydrogen diffusible hydrogen, mL/100 g
 * @param restraint how far the parts are held
 */
public record GivenSteel(BaseMetal base, Double dilution, Double hydrogen, Restraint restraint) {

    /** Nothing given. */
    public static final GivenSteel NONE = new GivenSteel(null, null, null, null);

    /** These, and what they leave out from another. */
    GivenSteel over(GivenSteel other) {
        return new GivenSteel(
                first(base, other.base),
                first(dilution, other.dilution),
                first(hydrogen, other.hydrogen),
                first(restraint, other.restraint));
    }
}
