package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class QuotedTest {

    @Test
    void whatWasSentIsToldBackUpToItsBounds() {
        assertEquals("x".repeat(64), Quoted.cut("x".repeat(64)));
        assertEquals("x".repeat(64) + "…", Quoted.cut("x".repeat(65)));
        // no half of a letter, at the cut or anywhere
        assertEquals("x".repeat(63) + "…", Quoted.cut("x".repeat(63) + "\ud83d\ude80"));
        assertEquals("x".repeat(62) + "\ud83d\ude80" + "…", Quoted.cut("x".repeat(62) + "\ud83d\ude80y"));
        assertEquals("a?b", Quoted.whole("a\ud800b"));
    }
}
