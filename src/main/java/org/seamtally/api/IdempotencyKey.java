package org.seamtally.api;

import jakarta.ws.rs.core.HttpHeaders;
import java.util.List;
import java.util.regex.Pattern;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/** The header by which a request that is sent again counts once: an IETF draft. */
final class IdempotencyKey {

    static final String HEADER = "Idempotency-Key";

    /** Visible ASCII: what every client can send and every log can show; a UUID is 36 of them. */
    static final String PATTERN = "[!-~]{1,255}";

    private static final Pattern TAKEN = Pattern.compile(PATTERN);

    private IdempotencyKey() {}

    /**
     * A request's key; null where it has none.
     *
     * @throws ProblemException 400 where it is not what is taken, or there are several
     */
    static String of(HttpHeaders headers) {
        List<String> given = headers.getRequestHeader(HEADER);
        if (given == null || given.isEmpty()) {
            return null;
        }
        if (given.size() > 1 || !TAKEN.matcher(given.get(0)).matches()) {
            throw new ProblemException(new ProblemReport(
                    "/problems/bad-header",
                    "A header is not what it may be.",
                    400,
                    null,
                    List.of(new Violation(
                            HEADER,
                            given.size() > 1 ? Violation.Key.TOO_MANY : Violation.Key.OUT_OF_RANGE,
                            HEADER + " is one of 1 to 255 visible ASCII characters",
                            "\"" + StreamTypes.shortened(String.join(", ", given)) + "\"",
                            null))));
        }
        return given.get(0);
    }

    /** 409: another request with the key is under way. */
    static ProblemException inFlight() {
        return new ProblemException(ProblemReport.of(
                409,
                "key-in-flight",
                "A request with this Idempotency-Key is under way.",
                "Ask again when it has been answered."));
    }

    /** 422: the key was used for another request. */
    static ProblemException used() {
        return new ProblemException(ProblemReport.of(
                422,
                "key-used",
                "This Idempotency-Key was used for another request.",
                "Another body, or other units or settings, were sent with it."));
    }
}
