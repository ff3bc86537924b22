package org.seamtally.wire;

import java.util.List;

/**
 * A row of a job table.
 *
 * @param line it starts in, from 1
 * @param cells null where the row could not be read
 * @param key what is wrong with the whole row; null where nothing is
 * @param message the same in plain words
 */
public record JobRow(long line, List<String> cells, String key, String message) {

    /** A row that was read. */
    public static JobRow of(long line, List<String> cells) {
        return new JobRow(line, cells, null, null);
    }

    /** A row that could not be read. */
    public static JobRow broken(long line, String key, String message) {
        return new JobRow(line, null, key, message);
    }
}
