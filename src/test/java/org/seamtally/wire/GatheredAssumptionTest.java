package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GatheredAssumptionTest {

    private static List<String> marks(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> "R" + i).toList();
    }

    private static AssumptionAnswer assumed(String path, String value, String because, int joints) {
        return new AssumptionAnswer(path, value, because, marks(joints));
    }

    /** Of a frame of twelve joints. */
    private static List<GatheredAssumption> gathered(AssumptionAnswer... assumptions) {
        return GatheredAssumption.of(new FrameEstimateAnswer(
                null,
                1,
                Collections.nCopies(12, null),
                null,
                null,
                null,
                null,
                List.of(assumptions),
                List.of(),
                List.of(),
                null));
    }

    @Test
    void oneOfAllJointsOrOfTheRequestNamesNoJoint() {
        GatheredAssumption due = new GatheredAssumption("arc.voltage", "11 V", "practice");
        assertEquals(List.of(due), gathered(assumed("arc.voltage", "11 V", "practice", 0)));
        assertEquals(List.of(due), gathered(assumed("frame.joints[*].arc.voltage", "11 V", "practice", 12)));
    }

    @Test
    void oneOfSomeJointsNamesThemOrSaysHowMany() {
        assertEquals(
                "11 V for R1, R2, R3, R4, R5, R6, R7, R8",
                gathered(assumed("arc.voltage", "11 V", "practice", 8)).get(0).values());
        assertEquals(
                "11 V for 9 of the joints",
                gathered(assumed("arc.voltage", "11 V", "practice", 9)).get(0).values());
    }

    @Test
    void valuesOfAFieldStandTogetherWhereTheirReasonIsOne() {
        AssumptionAnswer[] eight = IntStream.rangeClosed(1, 8)
                .mapToObj(i -> assumed("frame.joints[" + i + "].fillet.leg", i + " mm", "the wall", 1))
                .toArray(AssumptionAnswer[]::new);
        assertEquals(
                List.of(new GatheredAssumption(
                        "fillet.leg", "1 mm, 2 mm, 3 mm, 4 mm, 5 mm, 6 mm, 7 mm, 8 mm", "the wall")),
                gathered(eight));
        AssumptionAnswer[] nine = IntStream.rangeClosed(1, 10)
                .mapToObj(i -> assumed("frame.joints[" + i + "].fillet.leg", Math.min(i, 9) + " mm", "the wall", 1))
                .toArray(AssumptionAnswer[]::new);
        assertEquals("9 values, 1 mm and others", gathered(nine).get(0).values());
        assertEquals(
                List.of("11 V", "12 V"),
                gathered(assumed("arc.voltage", "11 V", "practice", 0), assumed("arc.voltage", "12 V", "a handbook", 0))
                        .stream()
                        .map(GatheredAssumption::values)
                        .toList());
    }

    @Test
    void marksAreListedUpToWhatASentenceHolds() {
        assertEquals("R1, R2, R3, R4, R5, R6, R7, R8", Marks.listed(marks(8)));
        assertEquals("R1 and 8 more", Marks.listed(marks(9)));
    }
}
