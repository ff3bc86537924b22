package org.seamtally.frame;

/**
 * Labour settings as given; null where left out.
 *
 * @param operatingFactor arc time over arc time and handling at the joint, a share
 * @param fitUpPerJoint s
 * @param setUpPerOrder s
 */
public record GivenLabour(Double operatingFactor, Double fitUpPerJoint, Double setUpPerOrder) {

    /** Nothing given. */
    public static final GivenLabour NONE = new GivenLabour(null, null, null);
}
