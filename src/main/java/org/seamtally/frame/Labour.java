package org.seamtally.frame;

/**
 * Paid time, s.
 *
 * @param arc with the arc on, tacks included
 * @param handling at the joint between arcs: moving, rod, tungsten, post-flow, cleaning
 * @param fitUp fitting the joints up
 * @param setUp setting the order up, its share
 * @param preheat heating up (where the source's power is known) and holding
 */
public record Labour(double arc, double handling, double fitUp, double setUp, double preheat) {

    /** No time. */
    static final Labour NONE = new Labour(0, 0, 0, 0, 0);

    /** All of it. */
    public double total() {
        return arc + handling + fitUp + setUp + preheat;
    }

    Labour withoutPreheat() {
        return new Labour(arc, handling, fitUp, setUp, 0);
    }

    Labour plus(Labour other) {
        return new Labour(
                arc + other.arc,
                handling + other.handling,
                fitUp + other.fitUp,
                setUp + other.setUp,
                preheat + other.preheat);
    }

    /** So many times this. */
    public Labour times(double count) {
        return new Labour(arc * count, handling * count, fitUp * count, setUp * count, preheat * count);
    }
}
