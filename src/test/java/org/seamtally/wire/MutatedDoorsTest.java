package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.quantity.UnitSystem;

/** The other doors under the same changes as the sample frame: an answer or a problem, never anything thrown. */
class MutatedDoorsTest {

    private static final long SEED = 20261124;
    private static final int EACH = 150;

    static Stream<String> pinned() throws IOException {
        return GoldenTest.names().stream()
                .filter(name -> !name.startsWith("frame-estimates") && !name.contains("refused") && name.endsWith(".si")
                        || name.startsWith("gas-setup"));
    }

    @ParameterizedTest(name = "{0}, seed " + SEED)
    @MethodSource("pinned")
    void isAnsweredOrRefused(String name) throws IOException {
        String body = Files.readString(Path.of("src/test/resources/golden", name + ".request.json"));
        GoldenTest.Door door = GoldenTest.DOORS.get(name.substring(0, name.indexOf('.')));
        SplittableRandom random = new SplittableRandom(SEED);
        int answered = 0;
        for (int i = 0; i < EACH; i++) {
            RequestTree request = RequestTree.of(body);
            for (int changes = 1 + random.nextInt(2); changes > 0; changes--) {
                MutatedSampleTest.mutate(request, random);
            }
            String changed = request.text();
            try {
                Outcome<?> outcome = door.answer(
                        RequestTree.ENGINE, new ByteArrayInputStream(changed.getBytes(UTF_8)), UnitSystem.US);
                if (outcome instanceof Outcome.Refused<?> refused) {
                    assertFalse(refused.problem().violations().isEmpty());
                    BadInputTest.inPlainWords(refused.problem());
                } else {
                    String json = RequestTree.json(((Outcome.Answered<?>) outcome).answer());
                    assertFalse(json.contains("\"NaN\"") || json.contains("Infinity\""), changed);
                    answered++;
                }
            } catch (RuntimeException | StackOverflowError e) {
                fail(changed, e);
            }
        }
        assertTrue(answered > 0 && answered < EACH, answered + " answered");
    }

    /** Each field of each door in each wrong shape, and each end of the range a refusal tells. */
    @ParameterizedTest
    @MethodSource("pinned")
    void everyFieldInEveryShape(String name) throws IOException {
        String body = Files.readString(Path.of("src/test/resources/golden", name + ".request.json"));
        GoldenTest.Door door = GoldenTest.DOORS.get(name.substring(0, name.indexOf('.')));
        for (String path : MutatedSampleTest.leaves(RequestTree.of(body).root(), "")) {
            for (String raw :
                    List.of("{}", "[]", "null", "true", "\"\"", "\"0 mm\"", "1e-2147483648", "-1", "\"NaN s\"")) {
                String changed = RequestTree.of(body).put(path, raw).text();
                try {
                    Outcome<?> outcome = door.answer(
                            RequestTree.ENGINE, new ByteArrayInputStream(changed.getBytes(UTF_8)), UnitSystem.SI);
                    if (outcome instanceof Outcome.Refused<?> refused) {
                        assertTrue(
                                refused.problem().violations().stream()
                                        .anyMatch(violation -> !violation.path().isEmpty()),
                                changed);
                    } else {
                        // any words do for a name
                        assertTrue(raw.equals("null") || path.endsWith(".name"), changed);
                    }
                } catch (RuntimeException e) {
                    fail(changed, e);
                }
            }
        }
    }
}
