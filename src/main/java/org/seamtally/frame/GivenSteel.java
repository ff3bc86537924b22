package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

import org.seamtally.catalogue.Steel;

/**
 * Base steel and dilution as given; null where left out.
 *
 * @param base the steel of the tubes
 * @param dilution share of the weld that is base metal
 */
public record GivenSteel(Steel base, Double dilution) {

    /** Nothing given. */
    public static final GivenSteel NONE = new GivenSteel(null, null);

    /** These, and what they leave out from another. */
    GivenSteel over(GivenSteel other) {
        return new GivenSteel(first(base, other.base), first(dilution, other.dilution));
    }
}
