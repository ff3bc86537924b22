package org.seamtally.seam;

import java.util.List;

/** The line in which the two members' surfaces meet: the root of the weld. */
public interface RootLine {

    /** Its smooth pieces, in order along the seam. */
    List<Stretch> stretches();
}
