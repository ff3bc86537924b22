package org.seamtally.page;

/**
 * What a printed document brings with it besides what it tells. It stands in the document itself: a quote that is sent on
 * keeps it.
 *
 * @param style its style sheet
 * @param script its script; empty on paper
 * @param lettersMissing the scripts whose letters stand as boxes; empty where there are none
 */
record Look(String style, String script, String lettersMissing) {

    /** What is seen on a screen and may be printed from there. */
    static Look onScreen(Paper paper) {
        return new Look(paper.onScreen(), Paper.script(), "");
    }

    /** What is on paper from the first. */
    static Look onPaper(Paper paper, String lettersMissing) {
        return new Look(paper.onPaper(), "", lettersMissing);
    }
}
