package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;

/**
 * What an earlier run has written: whole lines only, a torn last one does not count.
 *
 * @param end position after the last whole result, or after the header where there is none
 * @param counts of the results
 * @param lastLine of the job file that the last result's frame starts in; 0 where there is none
 * @param complete whether the trailer is there, and agrees
 */
record WrittenResults(long end, Counts counts, long lastLine, boolean complete) {

    /** Nothing yet. */
    static final WrittenResults NONE = new WrittenResults(0, Counts.NONE, 0, false);

    /** A whole line of a result file. */
    sealed interface Line permits Header, Result, Trailer, Foreign, Torn {}

    /** The header of a table. */
    record Header() implements Line {}

    /**
     * The result of a frame.
     *
     * @param line of the job file that the frame starts in
     */
    record Result(long line, boolean refused) implements Line {}

    /** The last line. */
    record Trailer(Counts counts) implements Line {}

    /** A whole line that is none of these: what comes after it is not read. */
    record Foreign() implements Line {}

    /** A part of a line, at the end. */
    record Torn() implements Line {}

    /** Reads a result file line by line. */
    interface Lines {

        /** The next line; null after the last. */
        Line next() throws IOException;

        /** Position after the whole line read last. */
        long position();
    }

    /**
     * Reads what is written.
     *
     * @throws NotBegunException where it is no result file, or one that was changed
     */
    static WrittenResults read(InputStream in, Form form) throws IOException, NotBegunException {
        Lines lines = form == Form.CSV ? new WrittenTable(in) : new WrittenNdjson(in);
        long done = 0;
        long refused = 0;
        long lastLine = 0;
        for (Line line = lines.next(); line != null && !(line instanceof Torn); line = lines.next()) {
            if (line instanceof Result result) {
                done += result.refused() ? 0 : 1;
                refused += result.refused() ? 1 : 0;
                lastLine = result.line();
            } else if (line instanceof Trailer trailer) {
                Counts counts = new Counts(done + refused, done, refused);
                if (!trailer.counts().equals(counts) || lines.next() != null) {
                    throw new NotBegunException("its counts are not those of its lines: it was changed");
                }
                return new WrittenResults(lines.position(), counts, lastLine, true);
            } else if (line instanceof Foreign) {
                throw new NotBegunException("line " + (done + refused + 1) + " is no result");
            }
        }
        return new WrittenResults(lines.position(), new Counts(done + refused, done, refused), lastLine, false);
    }
}
