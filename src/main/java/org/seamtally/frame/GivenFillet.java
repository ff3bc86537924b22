package org.seamtally.frame;

import org.seamtally.seam.Face;

/**
 * A fillet as given; null where left out.
 *
 * @param leg m
 * @param face form and rise
 * @param rootGap m
 */
public record GivenFillet(Double leg, Face face, Double rootGap) {

    /** Nothing given. */
    public static final GivenFillet NONE = new GivenFillet(null, null, null);
}
