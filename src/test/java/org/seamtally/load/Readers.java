package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.seamtally.batch.Form;
import org.seamtally.batch.JobFiles;
import org.seamtally.batch.JobFrames;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Display;
import org.seamtally.quantity.QuantityException;
import org.seamtally.quantity.Rate;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;

/**
 * What must hold of what this program reads, whatever the bytes: a refusal in its own words or a reading that is finite and
 * adds up, with an answer that grows no faster than what was sent. Anything else is thrown.
 */
final class Readers {

    private static final Engine ENGINE = new Engine("test");

    /** A violation of 300 characters for every field of four bytes. */
    private static final int MOST_OUT_PER_IN = 1000;

    private static final int LEAST_OUT = 50_000;
    private static final int LONGEST_GIVEN = 70;

    // a value of nine digits is read again within half a unit of the ninth
    private static final double NINE_DIGITS = 6e-9;

    // K: as far as the scales' zeroes are from absolute zero, where their nine digits count from
    private static final double FAR_FROM_ZERO = 460;

    // further out a value overflows in another unit, which showing it refuses
    private static final double SHOWABLE = 1e280;

    private Readers() {}

    /** Text with its unit, by a first byte that says of which kind, as a quantity and as a price by it. */
    static void quantity(byte[] data) {
        if (data.length == 0) {
            return;
        }
        Dimension dimension = Dimension.values()[(data[0] & 0xFF) % Dimension.values().length];
        String text = new String(data, 1, data.length - 1, StandardCharsets.UTF_8);
        try {
            readAgain(dimension, dimension.read(text));
        } catch (QuantityException e) {
            refused(e);
        }
        try {
            Rate rate = Rate.read(text, dimension);
            String written = rate.text();
            // a point without a digit before it gets one, which may be one character too many
            require(written.length() > 64 || Rate.read(written, dimension).equals(rate), written);
            require(Double.isFinite(rate.of(1).doubleValue()), written);
        } catch (QuantityException e) {
            refused(e);
        } catch (IllegalArgumentException e) {
            // degrees have no price: the program asks for none by them
            require(dimension == Dimension.TEMPERATURE, text);
        }
    }

    private static void readAgain(Dimension dimension, double si) {
        require(Double.isFinite(si), "not finite");
        if (si != 0 && (Math.abs(si) > SHOWABLE || Math.abs(si) < 1 / SHOWABLE)) {
            return;
        }
        for (UnitSystem system : UnitSystem.values()) {
            Display shown = dimension.show(si, system);
            double again = dimension.read(shown.value() + " " + shown.unit());
            double size = Math.abs(si) + (dimension == Dimension.TEMPERATURE ? FAR_FROM_ZERO : 0);
            require(Math.abs(again - si) <= NINE_DIGITS * size, si + " is shown as " + shown);
        }
    }

    private static void refused(QuantityException e) {
        require(!e.key().isEmpty() && !e.taken().isEmpty(), e.getMessage());
        require(e.given().length() <= LONGEST_GIVEN && e.getMessage().length() < 1000, e.getMessage());
    }

    /** A job table. */
    static void table(byte[] data) throws IOException {
        jobs(data, Form.CSV);
    }

    /** A job file of a JSON object a line. */
    static void lines(byte[] data) throws IOException {
        jobs(data, Form.NDJSON);
    }

    private static void jobs(byte[] data, Form form) throws IOException {
        long out = 0;
        CountedBytes in = new CountedBytes(data);
        try {
            JobFrames frames = JobFiles.open(in, form, null);
            long line = 0;
            for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
                require(frame.line() > line, "line " + frame.line() + " after line " + line);
                line = frame.line();
                JobLine result = ENGINE.jobLine(frame, UnitSystem.SI);
                JsonNode answer = answer(result.json());
                require(answer.path("line").longValue() == line, "the result of another line");
                require(answer.has("estimate") != answer.has("problem"), "an estimate or a problem");
                violations(answer.path("problem"));
                out += result.json().length;
            }
            require(line > 0, "a file without a frame is refused");
        } catch (RefusedException e) {
            refused(e.problem());
        }
        require(in.taken <= data.length, "bytes were read twice");
        linear(data, out);
    }

    /** A request's body, by a first byte that says of which endpoint. */
    static void json(byte[] data) throws IOException {
        if (data.length == 0) {
            return;
        }
        byte[] body = Arrays.copyOfRange(data, 1, data.length);
        byte[] first = answered(data[0] & 0xFF, body);
        linear(data, first.length);
        require(Arrays.equals(first, answered(data[0] & 0xFF, body)), "the same bytes are answered otherwise");
    }

    private static byte[] answered(int endpoint, byte[] body) throws IOException {
        ByteArrayInputStream in = new ByteArrayInputStream(body);
        Outcome<?> outcome = switch (endpoint % 7) {
            case 0 -> ENGINE.frameEstimate(in, UnitSystem.SI);
            case 1 -> ENGINE.deposit(in, UnitSystem.US, true);
            case 2 -> ENGINE.arcTime(in, UnitSystem.US);
            case 3 -> ENGINE.preheat(in, UnitSystem.SI);
            case 4 -> ENGINE.steelReview(in, UnitSystem.US);
            case 5 -> ENGINE.gasLoss(in, UnitSystem.SI);
            default -> ENGINE.comparison(in, UnitSystem.US);
        };
        if (outcome instanceof Outcome.Refused<?> refused) {
            refused(refused.problem());
            return Json.mapper().writeValueAsBytes(refused.problem());
        }
        byte[] written = Json.mapper().writeValueAsBytes(((Outcome.Answered<?>) outcome).answer());
        answer(written);
        return written;
    }

    private static JsonNode answer(byte[] json) throws IOException {
        JsonNode answer = Json.mapper().readTree(json);
        List<String> faults = AddedUp.faults(answer);
        require(faults.isEmpty(), faults.toString());
        return answer;
    }

    private static void refused(ProblemReport problem) {
        require(problem.status() == 400 || problem.status() == 422, "status " + problem.status());
        JsonNode told = Json.mapper().valueToTree(problem);
        require(!told.path("violations").isEmpty(), "a refusal that does not say why");
        violations(told);
    }

    private static void violations(JsonNode problem) {
        for (JsonNode violation : problem.path("violations")) {
            require(
                    !violation.path("key").asText().isEmpty()
                            && violation.path("given").asText().length() <= LONGEST_GIVEN,
                    violation.toString());
        }
    }

    private static void linear(byte[] in, long out) {
        require(out <= LEAST_OUT + (long) MOST_OUT_PER_IN * in.length, out + " bytes for " + in.length);
    }

    private static void require(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }

    /** Counts what is taken from it. */
    private static final class CountedBytes extends FilterInputStream {

        private long taken;

        CountedBytes(byte[] bytes) {
            super(new ByteArrayInputStream(bytes));
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            taken += value < 0 ? 0 : 1;
            return value;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int got = super.read(buffer, offset, length);
            taken += Math.max(0, got);
            return got;
        }
    }
}
