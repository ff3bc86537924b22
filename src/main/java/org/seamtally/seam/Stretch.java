package org.seamtally.seam;

/** A smooth piece of a root line, run through by a parameter from 0 to {@link #end()}. */
interface Stretch {

    /** Where the parameter ends. */
    double end();

    /** Whether the stretch comes back to its own start, with all derivatives. */
    boolean closed();

    /** Whether its second half is the first one run backwards: length and deposit are the same, the angle drifts the other way. */
    default boolean mirrored() {
        return false;
    }

    /**
     * The root line at one place.
     *
     * @param parameter 0 to {@link #end()}, the ends themselves left out where the stretch is open
     */
    Station at(double parameter);

    /**
     * The root line's length per parameter at one place, m: what {@link #at} says of it, for whoever asks no more.
     *
     * @param parameter as there
     */
    default double speed(double parameter) {
        return at(parameter).speed();
    }
}
