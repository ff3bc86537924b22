package org.seamtally.api;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.seamtally.batch.Form;

/** Media types of job files and of their results. */
final class StreamTypes {

    /** A JSON object a line. */
    static final String NDJSON = "application/x-ndjson";

    /** A table: RFC 4180. */
    static final String CSV = "text/csv";

    /** Settings and a job file: RFC 7578. */
    static final String PARTS = MediaType.MULTIPART_FORM_DATA;

    /** Forms of job files by their media type. */
    private static final Map<String, Form> FORMS = Map.of(NDJSON, Form.NDJSON, CSV, Form.CSV);

    private static final MediaType NDJSON_TYPE = MediaType.valueOf(NDJSON);
    private static final MediaType CSV_TYPE = MediaType.valueOf(CSV);

    private StreamTypes() {}

    /**
     * The form that a media type names; null for one that is no job file's.
     *
     * @throws ProblemException 415 where it names a charset other than UTF-8
     */
    static Form form(MediaType type) {
        Form form = FORMS.get(plain(type));
        if (form != null) {
            requireUtf8(type);
        }
        return form;
    }

    /** Whether a body of this type is settings and a job file. */
    static boolean isParts(MediaType type) {
        return plain(type).equals(PARTS);
    }

    static void requireUtf8(MediaType type) {
        String charset = type.getParameters().get(MediaType.CHARSET_PARAMETER);
        if (charset != null && !charset.equalsIgnoreCase(StandardCharsets.UTF_8.name())) {
            throw new ProblemException(Problems.unsupportedMediaType(
                    "The charset is UTF-8, not " + shortened(charset) + ": save the file as UTF-8."));
        }
    }

    /**
     * The type that a request's body is said to have.
     *
     * @throws ProblemException 415 where it is said to have none
     */
    static MediaType of(HttpHeaders headers) {
        MediaType type = headers.getMediaType();
        if (type == null) {
            throw new ProblemException(Problems.unsupportedMediaType(null));
        }
        return type;
    }

    /**
     * The form of results that is asked for: NDJSON where both will do.
     *
     * @throws ProblemException 406 where neither will
     */
    static Form asked(Request request) {
        return Acceptable.of(request, NDJSON_TYPE, CSV_TYPE).isCompatible(CSV_TYPE) ? Form.CSV : Form.NDJSON;
    }

    /** What an answer says that it is: CSV's charset is ASCII where none is named, NDJSON's is UTF-8 always. */
    static String answered(Form form) {
        return form == Form.CSV ? CSV + ";charset=UTF-8" : NDJSON;
    }

    /** The types of job files, in words. */
    static List<String> taken() {
        return List.of(NDJSON, CSV);
    }

    static String shortened(String given) {
        return given.length() <= 64 ? given : given.substring(0, 64) + "…";
    }

    private static String plain(MediaType type) {
        return (type.getType() + "/" + type.getSubtype()).toLowerCase(java.util.Locale.ROOT);
    }
}
