package org.seamtally.api;

import jakarta.ws.rs.core.MediaType;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.jboss.resteasy.reactive.common.headers.HeaderUtil;
import org.seamtally.batch.Form;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/**
 * A job file as it was sent.
 *
 * @param form of the file
 * @param settings JSON; null where none were sent
 * @param jobs the file, read as it arrives
 */
record Upload(Form form, byte[] settings, InputStream jobs) {

    /** Longest settings taken, bytes: all of them with analyses of steel and filler are a few kilobytes. */
    static final int LONGEST_SETTINGS = 1 << 20;

    private static final String SETTINGS = "settings";
    private static final String JOBS = "jobs";

    /**
     * Reads as far as the job file's first byte.
     *
     * @throws ProblemException 415 where it is none, or not UTF-8; 413 and 422 where its parts are not those that are taken
     * @throws Multipart.MalformedException where it is said to be parts and is not
     */
    static Upload of(MediaType type, InputStream body) throws IOException {
        if (StreamTypes.isParts(type)) {
            String boundary = type.getParameters().get("boundary");
            if (boundary == null || boundary.isEmpty() || boundary.length() > 70) {
                throw new Multipart.MalformedException("its type names no boundary of 1 to 70 characters");
            }
            return ofParts(new Multipart(body, boundary));
        }
        Form form = StreamTypes.form(type);
        if (form == null) {
            throw new ProblemException(Problems.unsupportedMediaType(null));
        }
        return new Upload(form, null, body);
    }

    private static Upload ofParts(Multipart parts) throws IOException {
        byte[] settings = null;
        Multipart.Part part = parts.next();
        if (part != null && SETTINGS.equals(name(part))) {
            requireJson(part);
            settings = parts.content().readNBytes(LONGEST_SETTINGS + 1);
            if (settings.length > LONGEST_SETTINGS) {
                throw new ProblemException(Problems.tooLarge("Of settings at most 1 MiB is taken."));
            }
            part = parts.next();
        }
        if (part == null) {
            throw violation(JOBS, Violation.Key.MISSING, "the part jobs is due, with the job file", null, null);
        }
        if (!JOBS.equals(name(part))) {
            throw violation(
                    StreamTypes.shortened(String.valueOf(name(part))),
                    Violation.Key.UNKNOWN_FIELD,
                    "the parts are settings, which may be left out, and then jobs",
                    null,
                    settings == null ? List.of(SETTINGS, JOBS) : List.of(JOBS));
        }
        Form form = StreamTypes.form(type(part, JOBS));
        if (form == null) {
            throw wrongType(JOBS, part.type(), StreamTypes.taken());
        }
        return new Upload(form, settings, parts.lastContent());
    }

    /** Settings can be nothing but JSON: they are taken as that too where a client says nothing of them, or "some bytes". */
    private static void requireJson(Multipart.Part part) {
        if (part.type() == null) {
            return;
        }
        MediaType type = type(part, SETTINGS);
        if (!MediaType.APPLICATION_JSON_TYPE.isCompatible(type)
                && !MediaType.APPLICATION_OCTET_STREAM_TYPE.isCompatible(type)) {
            throw wrongType(SETTINGS, part.type(), List.of(MediaType.APPLICATION_JSON));
        }
        StreamTypes.requireUtf8(type);
    }

    private static String name(Multipart.Part part) {
        return part.disposition() == null ? null : HeaderUtil.extractQuotedValueFromHeader(part.disposition(), "name");
    }

    private static MediaType type(Multipart.Part part, String name) {
        try {
            // RFC 7578, 4.4: text where nothing is said
            return part.type() == null ? MediaType.TEXT_PLAIN_TYPE : MediaType.valueOf(part.type());
        } catch (IllegalArgumentException e) {
            throw wrongType(
                    name, part.type(), name.equals(JOBS) ? StreamTypes.taken() : List.of(MediaType.APPLICATION_JSON));
        }
    }

    private static ProblemException wrongType(String part, String given, List<String> taken) {
        return violation(
                part,
                Violation.Key.UNKNOWN_WORD,
                "the part's Content-Type has to be " + String.join(" or ", taken) + "; with curl: -F '" + part
                        + "=@FILE;type=" + taken.get(0) + "'",
                given == null ? null : "\"" + StreamTypes.shortened(given) + "\"",
                taken);
    }

    private static ProblemException violation(
            String path, String key, String message, String given, List<String> taken) {
        return new ProblemException(ProblemReport.invalid(List.of(new Violation(path, key, message, given, taken))));
    }
}
