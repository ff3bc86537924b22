package org.seamtally.wire;

/** A part of a request whose fields have to fit one another. Fields that are wrong by themselves are left out of it. */
@CrossCheck
interface CrossChecked {

    /** Says what does not fit. */
    void check(Contradictions contradictions);
}
