package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.Json;
import org.seamtally.wire.RefusedException;

/** Whatever bytes a job file is made of, each frame has its estimate or its problem, or the file is refused. */
class MutatedJobFilesTest {

    private static final long SEED = 20260117;

    private static final int FILES = 200;

    private static final byte[][] PIECES = {
        bytes("\""),
        bytes(","),
        bytes("\n"),
        bytes("\r"),
        bytes("\r\n"),
        bytes("{"),
        bytes("}"),
        bytes("\0"),
        bytes("\ud83d\udd25"),
        {(byte) 0xff},
        {(byte) 0xc3},
        bytes("1,5"),
        bytes("["),
        bytes("\\"),
        bytes("null"),
        bytes(";"),
        bytes("-"),
        bytes("e9"),
        bytes(" mm"),
        bytes("\ufeff"),
        bytes("\u2028"),
        bytes("=")
    };

    private final Engine engine = new Engine("test");

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @EnumSource
    void nothingIsLostAndNothingIsThrown(Form form) throws IOException {
        byte[] sound =
                Files.readAllBytes(Path.of("sample-jobs", form == Form.CSV ? "open-orders.csv" : "open-orders.ndjson"));
        byte[] settings = Files.readAllBytes(Path.of("sample-jobs", "shop-settings.json"));
        SplittableRandom random = new SplittableRandom(SEED);
        int refusedFiles = 0;
        int refused = 0;
        int done = 0;
        for (int i = 0; i < FILES; i++) {
            long seed = random.nextLong();
            byte[] file = mutated(sound, new SplittableRandom(seed));
            String told = "file of seed " + seed;
            try {
                JobFrames frames = JobFiles.open(new ByteArrayInputStream(file), form, settings);
                long line = 0;
                for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
                    assertTrue(frame.line() > line, told);
                    line = frame.line();
                    JobLine result = engine.jobLine(frame, UnitSystem.SI);
                    assertEquals(line, result.line(), told);
                    // a result is one line of JSON
                    assertTrue(new String(result.json(), StandardCharsets.UTF_8).indexOf('\n') < 0, told);
                    assertEquals(
                            line,
                            Json.mapper().readTree(result.json()).get("line").asLong(),
                            told);
                    refused += result.refused() ? 1 : 0;
                    done += result.refused() ? 0 : 1;
                }
                assertTrue(line > 0, told);
            } catch (RefusedException e) {
                assertTrue(
                        e.problem().status() == 422 && !e.problem().violations().isEmpty(), told);
                refusedFiles++;
            } catch (RuntimeException e) {
                throw new AssertionError(told, e);
            }
        }
        assertTrue(done > FILES / 2 && refused > FILES / 2, done + " done, " + refused + " refused");
        assertTrue(form == Form.NDJSON || refusedFiles > FILES / 50, refusedFiles + " files refused");
    }

    /** A piece of the file with a few bytes changed, cut out, doubled or put in. */
    private static byte[] mutated(byte[] sound, SplittableRandom random) {
        List<Byte> file = new ArrayList<>();
        int end = Math.min(sound.length, 900 + random.nextInt(1500));
        for (byte value : Arrays.copyOf(sound, end)) {
            file.add(value);
        }
        int changes = 1 + random.nextInt(4);
        for (int i = 0; i < changes && !file.isEmpty(); i++) {
            int at = random.nextInt(file.size());
            switch (random.nextInt(4)) {
                case 0 -> file.set(at, (byte) random.nextInt(256));
                case 1 ->
                    file.subList(at, Math.min(file.size(), at + 1 + random.nextInt(30)))
                            .clear();
                case 2 ->
                    file.addAll(at, List.copyOf(file.subList(at, Math.min(file.size(), at + random.nextInt(200)))));
                default -> {
                    for (byte value : PIECES[random.nextInt(PIECES.length)]) {
                        file.add(at++, value);
                    }
                }
            }
        }
        byte[] bytes = new byte[file.size()];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = file.get(i);
        }
        return bytes;
    }
}
