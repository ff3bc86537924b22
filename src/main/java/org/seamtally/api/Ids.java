package org.seamtally.api;

import java.util.UUID;
import java.util.regex.Pattern;

/** Ids of what is kept, as they are written: RFC 9562 in lower case, and in no other spelling. */
final class Ids {

    private static final Pattern WRITTEN = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

    private Ids() {}

    /** The id; null where the text is none. */
    static UUID of(String text) {
        return WRITTEN.matcher(text).matches() ? UUID.fromString(text) : null;
    }

    /**
     * The id of something that is kept.
     *
     * @throws ProblemException 404 where it is none: there is no such thing
     */
    static UUID kept(String text) {
        UUID id = of(text);
        if (id == null) {
            throw Problems.notFound();
        }
        return id;
    }

    /**
     * The number of a state of something that is kept.
     *
     * @throws ProblemException 404 where it is none: there is no such thing
     */
    static int number(String text) {
        if (!text.matches("[1-9][0-9]{0,8}")) {
            throw Problems.notFound();
        }
        return Integer.parseInt(text);
    }
}
