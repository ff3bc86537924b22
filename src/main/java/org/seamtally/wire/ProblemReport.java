package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A request that was not carried out: problem details by RFC 9457. */
@Schema(description = "A request that was not carried out: problem details by RFC 9457.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ProblemReport(
        @Schema(description = "Kind of problem, a relative reference.", required = true, examples = "/problems/invalid")
        String type,

        @Schema(description = "The kind in plain words.", required = true)
        String title,

        @Schema(description = "HTTP status.", required = true, minimum = "400", maximum = "599", examples = "422")
        int status,

        @Schema(description = "This case in plain words.") String detail,

        @Schema(
                description =
                        "The request that was refused, a relative reference: it ends in what stands in the answer's"
                                + " X-Request-Id header and in the service's log. Absent where a problem is part of an answer.",
                examples = "/requests/7f3a0c1e")
        String instance,

        @Schema(description = "Everything found wrong, by path; absent where the body was never looked at.")
        List<Violation> violations) {

    /** A problem, not yet of any one request. */
    public ProblemReport(String type, String title, int status, String detail, List<Violation> violations) {
        this(type, title, status, detail, null, violations);
    }

    /** The same, of one request. */
    public ProblemReport about(String instance) {
        return new ProblemReport(type, title, status, detail, instance, violations);
    }

    /** A problem without violations. */
    public static ProblemReport of(int status, String word, String title, String detail) {
        return new ProblemReport("/problems/" + word, title, status, detail, null);
    }

    /** 400: the text is no JSON. */
    static ProblemReport notJson(Violation violation) {
        return new ProblemReport("/problems/not-json", "The body is not JSON.", 400, null, List.of(violation));
    }

    /** 400: a query parameter is not what it may be. */
    public static ProblemReport badQuery(String parameter, String given, List<String> taken) {
        String name = Quoted.cut(parameter);
        return new ProblemReport(
                "/problems/bad-query",
                "A query parameter is not what it may be.",
                400,
                null,
                List.of(new Violation(
                        name,
                        Violation.Key.UNKNOWN_WORD,
                        name + " is " + String.join(" or ", taken),
                        "\"" + Quoted.cut(given) + "\"",
                        taken)));
    }

    /** 422: everything found wrong with a body. */
    public static ProblemReport invalid(List<Violation> violations) {
        String count = violations.size() == 1 ? "One field is" : violations.size() + " fields are";
        return new ProblemReport(
                "/problems/invalid",
                "The request cannot be worked with.",
                422,
                count + " not what is taken.",
                violations);
    }
}
