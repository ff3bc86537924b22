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
}
