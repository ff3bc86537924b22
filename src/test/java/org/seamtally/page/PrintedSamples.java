package org.seamtally.page;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Consumer;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.Outcome;

/** Quotes of the sample frames, to be printed. */
final class PrintedSamples {

    private static final Engine ENGINE = new Engine("printed");
    private static final ObjectMapper JSON = new ObjectMapper();

    static final String LETTERHEAD = "Ridge Lane Frames\nUnit 4, Ridge Lane";

    private PrintedSamples() {}

    static PrintedQuote of(String sample, UnitSystem units) {
        return of(sample, units, request -> {});
    }

    /** @param change what is changed in the sample before it is estimated */
    static PrintedQuote of(String sample, UnitSystem units, Consumer<ObjectNode> change) {
        return quote(answer(sample, units, change), Optional.of("Hillside yard, order 17"), Optional.empty());
    }

    static PrintedQuote quote(FrameEstimateAnswer answer, Optional<String> reference, Optional<String> notes) {
        return new PrintedQuote(
                "Q-000123",
                2,
                LocalDate.of(2026, 3, 4),
                reference,
                Optional.of(LocalDate.of(2026, 4, 3)),
                notes,
                Optional.of(LETTERHEAD),
                answer);
    }

    static FrameEstimateAnswer answer(String sample, UnitSystem units, Consumer<ObjectNode> change) {
        try {
            ObjectNode request = (ObjectNode) JSON.readTree(Files.readString(Path.of("sample-jobs", sample + ".json")));
            change.accept(request);
            byte[] body = request.toString().getBytes(StandardCharsets.UTF_8);
            Outcome<FrameEstimateAnswer> outcome = ENGINE.frameEstimate(new ByteArrayInputStream(body), units);
            if (outcome instanceof Outcome.Answered<FrameEstimateAnswer> answered) {
                return answered.answer();
            }
            throw new AssertionError(sample + ": " + ((Outcome.Refused<?>) outcome).problem());
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
