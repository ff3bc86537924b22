package org.seamtally.frame;

import java.util.Optional;
import org.seamtally.gas.BackPurge;

/**
 * A joint of a frame as given; null where left out.
 *
 * @param mark what the drawing calls it
 * @param count how many of them the frame has, 1 or more
 * @param shape kind and sizes
 * @param tacks tack welds, 0 or more
 * @param segments arc-on stretches, 1 or more
 * @param preheated whether it is to be preheated
 * @param access factor on the handling time, positive; over 1 where it is hard to reach
 * @param backPurge gas inside the tube
 * @param procedure reference of the qualified procedure, printed through
 * @param own settings that differ from the request's
 */
public record GivenJoint(
        String mark,
        Integer count,
        JointShape shape,
        Integer tacks,
        Integer segments,
        Boolean preheated,
        Double access,
        Optional<BackPurge> backPurge,
        Optional<String> procedure,
        Settings own) {

    /** The mark of a joint that was sent without one: its number in the order sent. */
    public static String markOf(int index) {
        return "#" + (index + 1);
    }

    /** The same joint, to be preheated whatever it says. */
    public GivenJoint asPreheated() {
        return new GivenJoint(mark, count, shape, tacks, segments, true, access, backPurge, procedure, own);
    }

    /** Whether it is to be preheated: where it says so, or brings preheat settings of its own and does not say no. */
    boolean toBePreheated() {
        return preheated != null ? preheated : !own.preheat().equals(GivenPreheat.NONE);
    }
}
