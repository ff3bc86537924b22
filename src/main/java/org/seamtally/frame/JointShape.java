package org.seamtally.frame;

import org.seamtally.seam.Joint;

/** A joint's kind and sizes as given, with what is left out still open. */
@FunctionalInterface
public interface JointShape {

    /**
     * Makes the joint.
     *
     * @param defaults what to take for what was left out; asking it notes the assumption
     */
    Joint joint(ShapeDefaults defaults);
}
