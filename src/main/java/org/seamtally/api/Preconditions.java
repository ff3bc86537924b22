package org.seamtally.api;

import jakarta.ws.rs.core.HttpHeaders;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/**
 * Which state of what is kept a change was made from: If-Match and If-None-Match of RFC 9110, 13.1. A state is tagged by its
 * number, {@code "3"}, and in US customary units {@code "3-us"}.
 */
final class Preconditions {

    private static final String ANY = "*";
    // one after the other: a pattern of them all would take a stack as deep as the header is long
    private static final Pattern TAG = Pattern.compile("\\G\\s*(W/)?\"[!#-~]*\"\\s*(,|$)");
    private static final Pattern STATE = Pattern.compile("(W/)?\"([0-9]{1,9})(-us)?\"");

    private Preconditions() {}

    /** The tag of a state. */
    static String tag(int number, UnitSystem units) {
        return "\"" + number + (units == UnitSystem.US ? "-us" : "") + "\"";
    }

    /**
     * The states that a change may be made from.
     *
     * @return takes a state's number; null where the request does not say
     * @throws ProblemException 400 where the header is not what HTTP takes
     */
    static IntPredicate ifMatch(HttpHeaders headers) {
        String given = header(headers, HttpHeaders.IF_MATCH);
        if (given == null) {
            return null;
        }
        if (given.strip().equals(ANY)) {
            return latest -> latest > 0;
        }
        require(isListOfTags(given), HttpHeaders.IF_MATCH, given, "* or the ETag of what was read");
        // a weak tag matches nothing here: RFC 9110, 13.1.1
        Set<Integer> states = Arrays.stream(given.split(","))
                .map(tag -> STATE.matcher(tag.strip()))
                .filter(tag -> tag.matches() && tag.group(1) == null)
                .map(tag -> Integer.valueOf(tag.group(2)))
                .collect(Collectors.toSet());
        return states::contains;
    }

    private static boolean isListOfTags(String given) {
        Matcher tag = TAG.matcher(given);
        boolean another = true;
        int end = 0;
        while (another && tag.find()) {
            another = tag.group(2).equals(",");
            end = tag.end();
        }
        return !another && end == given.length();
    }

    /**
     * Whether a change is to be made only where there is nothing yet.
     *
     * @throws ProblemException 400 where the header is another than {@code *}
     */
    static boolean isForNewAlone(HttpHeaders headers) {
        String given = header(headers, HttpHeaders.IF_NONE_MATCH);
        require(given == null || given.strip().equals(ANY), HttpHeaders.IF_NONE_MATCH, given, "* or left out");
        return given != null;
    }

    private static String header(HttpHeaders headers, String name) {
        List<String> given = headers.getRequestHeader(name);
        return given == null || given.isEmpty() ? null : String.join(", ", given);
    }

    private static void require(boolean fits, String header, String given, String taken) {
        if (!fits) {
            throw new ProblemException(new ProblemReport(
                    "/problems/bad-header",
                    "A header is not what it may be.",
                    400,
                    null,
                    List.of(new Violation(
                            header,
                            Violation.Key.OUT_OF_RANGE,
                            header + " is " + taken,
                            "\"" + StreamTypes.shortened(given) + "\"",
                            null))));
        }
    }

    /** 428: a change has to say from which state it was made. */
    static ProblemException required() {
        return new ProblemException(ProblemReport.of(
                428,
                "precondition-required",
                "If-Match is needed.",
                "Read it first, and send its ETag as If-Match, so that nobody's change is lost."));
    }

    /** 412: something was changed meanwhile. */
    static ProblemException failed(int latest) {
        return new ProblemException(ProblemReport.of(
                412,
                "precondition-failed",
                "It was changed meanwhile.",
                latest == 0 ? "There is no such thing." : "The latest is " + latest + ": read it, and change that."));
    }
}
