package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.quantity.UnitSystem;

/** An estimate that takes longer than it may is given up before its next joint. */
class FrameDeadlineTest {

    private static final String PLUG = "{\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}";

    /** The clock is read once at the start and once before each of two joints. */
    @ParameterizedTest
    @CsvSource({"15000000000, true", "15000000001, false"})
    void thirtySecondsAreTakenAndANanosecondMoreIsNot(long step, boolean done) throws IOException {
        AtomicLong now = new AtomicLong();
        Engine engine = new Engine("1", () -> now.getAndAdd(step));
        Outcome<FrameEstimateAnswer> outcome = engine.frameEstimate(
                new ByteArrayInputStream(
                        ("{\"frame\": {\"joints\": [" + PLUG + "," + PLUG + "]}}").getBytes(StandardCharsets.UTF_8)),
                UnitSystem.SI);
        if (done) {
            assertInstanceOf(Outcome.Answered.class, outcome);
        } else {
            ProblemReport problem =
                    assertInstanceOf(Outcome.Refused.class, outcome).problem();
            assertEquals(503, problem.status());
            assertEquals("/problems/time-limit", problem.type());
        }
    }
}
