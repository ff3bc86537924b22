package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The transient against {@link ReferenceHose}, which shares no code with it, on 50 cells. */
class ReferenceTransientTest {

    private static final int CELLS = 50;

    static Stream<Rig.Drawn> setUps() {
        return Rig.sweep(20_240_601, 20);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void agreesOverTheWholeRange(Rig.Drawn drawn) {
        agrees(drawn.setUp());
    }

    @Test
    void agreesForTheUsualSetUpAndItsVariants() {
        agrees(Rig.usual());
        agrees(Rig.smallBore());
        agrees(Rig.withOrifice());
    }

    private static void agrees(SetUp setUp) {
        ReferenceHose reference = new ReferenceHose(setUp, CELLS);
        StartTransient start = StartTransient.of(setUp);
        assertEquals(reference.net, start.netSurge(), 0.01 * reference.net, "net surge");
        assertEquals(reference.peak, start.peakFlow(), 0.01 * reference.peak, "peak");
        // a millisecond is below what any valve resolves
        assertEquals(reference.within5, start.timeWithin5Percent(), 0.03 * reference.within5 + 1e-3, "time to 5 %");
    }
}
