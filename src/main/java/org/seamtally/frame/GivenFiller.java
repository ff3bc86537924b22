package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

import org.seamtally.catalogue.Filler;

/**
 * Filler as given; null where left out.
 *
 * @param filler the rod's classification
 * @param diameter m
 * @param rodLength m
 * @param stubLength m
 * @param depositionEfficiency share
 */
public record GivenFiller(
        Filler filler, Double diameter, Double rodLength, Double stubLength, Double depositionEfficiency) {

    /** Nothing given. */
    public static final GivenFiller NONE = new GivenFiller(null, null, null, null, null);

    /** These, and what they leave out from another. */
    GivenFiller over(GivenFiller base) {
        return new GivenFiller(
                first(filler, base.filler),
                first(diameter, base.diameter),
                first(rodLength, base.rodLength),
                first(stubLength, base.stubLength),
                first(depositionEfficiency, base.depositionEfficiency));
    }
}
