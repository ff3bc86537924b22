package org.seamtally.wire;

import java.util.List;

/** Joints' marks in a sentence. */
final class Marks {

    /** More marks than this in one sentence and nobody reads the sentence. */
    static final int MOST = 8;

    private Marks() {}

    /** The marks, or the first and how many more. */
    static String listed(List<String> marks) {
        return marks.size() <= MOST ? String.join(", ", marks) : marks.get(0) + " and " + (marks.size() - 1) + " more";
    }
}
