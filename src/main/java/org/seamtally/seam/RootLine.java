package org.seamtally.seam;

import java.util.List;

/** The line in which the two members' surfaces meet: the root of the weld. */
public interface RootLine {

    /** Its smooth pieces, in order along the seam. */
    List<Stretch> stretches();

    /**
     * The corners between its smooth pieces: stations without length, with the whole turn. A corner is the limit of an
     * ever tighter bend, along which the section turns too.
     */
    default List<Station> corners() {
        return List.of();
    }
}
