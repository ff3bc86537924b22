package org.seamtally.load;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamtally.batch.Form;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.ProgramVersion;

/** The maker of job files makes what it says. */
class JobFileTest {

    @ParameterizedTest
    @EnumSource
    void theSameSeedMakesTheSameFileAndAnotherSeedAnother(Form form) throws IOException {
        byte[] file = JobFile.bytes(form, 40, 5, 6, 0.1);
        assertArrayEquals(file, JobFile.bytes(form, 40, 5, 6, 0.1));
        assertFalse(Arrays.equals(file, JobFile.bytes(form, 40, 6, 6, 0.1)));
    }

    @Test
    void framesAreEstimatedAndThoseSpoiltAreRefused() throws IOException {
        Engine engine = new Engine(ProgramVersion.text());
        assertEquals(0, refused(engine, JobFile.bytes(Form.NDJSON, 150, 1, 6, 0)));
        assertEquals(60, refused(engine, JobFile.bytes(Form.NDJSON, 60, 2, 3, 1)));
        long some = refused(engine, JobFile.bytes(Form.NDJSON, 200, 3, 1, 0.25));
        assertTrue(some > 25 && some < 75, some + " of 200 at a share of 0.25");
    }

    private static long refused(Engine engine, byte[] file) throws IOException {
        long refused = 0;
        for (String line : new String(file, UTF_8).lines().toList()) {
            Outcome<FrameEstimateAnswer> outcome =
                    engine.frameEstimate(new ByteArrayInputStream(line.getBytes(UTF_8)), UnitSystem.SI);
            refused += outcome instanceof Outcome.Refused ? 1 : 0;
        }
        return refused;
    }

    @Test
    void jointsAreOfEveryKindAndSomeHaveAHoseOfTheirOwn() {
        FrameMaker maker = new FrameMaker(1, 12, 0);
        Set<String> kinds = new HashSet<>();
        long joints = 0;
        long hoses = 0;
        for (int i = 0; i < 100; i++) {
            for (MadeFrame.Joint joint : maker.next().joints()) {
                kinds.add(joint.kind());
                joints++;
                hoses += joint.fields().containsKey("gas.hose.length") ? 1 : 0;
            }
        }
        assertEquals(Set.of("tube-to-tube", "tube-to-plate", "plate-fillet", "tube-sleeve", "plug"), kinds);
        assertEquals(12, joints / 100.0, 1.5);
        assertEquals(0.2, hoses / (double) joints, 0.06);
    }

    @Test
    void aTableHasARowAJointAndUnitsInItsHeader() throws IOException {
        List<String> rows =
                new String(JobFile.bytes(Form.CSV, 10, 9, 4, 0), UTF_8).lines().toList();
        assertTrue(rows.get(0)
                .startsWith("frame,quantity,mark,count,kind,branch outside diameter [in],branch wall [in],"));
        long joints = 0;
        FrameMaker maker = new FrameMaker(9, 4, 0);
        for (int i = 0; i < 10; i++) {
            joints += maker.next().joints().size();
        }
        assertEquals(1 + joints, rows.size());
    }
}
