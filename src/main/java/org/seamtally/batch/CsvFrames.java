package org.seamtally.batch;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobHeader;
import org.seamtally.wire.JobRow;
import org.seamtally.wire.JobSettings;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.TabledFrame;
import org.seamtally.wire.Violation;

/** Frames of a table, a joint a row: the rows of a frame stand together. */
final class CsvFrames implements JobFrames {

    /** Far beyond any frame, and what a request takes. */
    private static final int MOST_ROWS = 10_000;

    private final CsvRows rows;
    private final JobHeader header;
    private final JobSettings settings;
    private final SeenNames seen = new SeenNames();
    private NamedRow ahead;
    private List<NamedRow> nobodys = List.of();

    /**
     * A row with the frame that it names.
     *
     * @param frame null where the row does not tell
     */
    private record NamedRow(JobRow row, String frame, long length) {

        /** Bytes that are held of it: of a broken row it is no more than what is wrong with it. */
        long heldLength() {
            return row.key() == null ? length : 0;
        }
    }

    private CsvFrames(CsvRows rows, JobHeader header, JobSettings settings) {
        this.rows = rows;
        this.header = header;
        this.settings = settings;
    }

    /**
     * Reads the header.
     *
     * @throws RefusedException with everything that is wrong with it
     */
    static CsvFrames open(ByteSource source, JobSettings settings) throws IOException, RefusedException {
        CsvRows rows = new CsvRows(source);
        JobRow first = rows.next();
        if (first == null) {
            throw FirstBytes.refused(Violation.Key.EMPTY, "there is no header in this file, and no frame");
        }
        if (first.key() != null) {
            throw FirstBytes.refused(first.key(), "header: " + first.message());
        }
        return new CsvFrames(rows, JobHeader.read(first.cells(), first.line()), settings);
    }

    @Override
    public JobFrame next() throws IOException {
        NamedRow row = ahead == null ? read() : ahead;
        ahead = null;
        if (row == null) {
            return null;
        }
        // a row that does not say whose it is may be this frame's as well as the last one's: neither goes without it
        List<NamedRow> unclear = new ArrayList<>(nobodys);
        long unclearLength = 0;
        nobodys = List.of();
        Gathering frame = new Gathering();
        unclear.forEach(frame::add);
        String name = row.frame;
        while (row != null && (row.frame == null || name == null || row.frame.equals(name))) {
            name = name == null ? row.frame : name;
            frame.add(row);
            if (row.frame != null) {
                unclear = new ArrayList<>();
                unclearLength = 0;
            } else if (unclear.isEmpty()
                    || unclear.size() < TOLD_TWICE && unclearLength + row.heldLength() <= JobFiles.LONGEST_LINE) {
                unclear.add(row);
                unclearLength += row.heldLength();
            }
            row = read();
        }
        ahead = row;
        nobodys = row == null ? List.of() : unclear;
        return frame.end(name);
    }

    // of rows that are told of with two frames: enough to find them, the first in any case; they are held until the
    // next
    // frame, and so are bounded in length as that is
    private static final int TOLD_TWICE = 100;

    private NamedRow read() throws IOException {
        JobRow row = rows.next();
        if (row == null) {
            return null;
        }
        String name = row.cells() == null
                ? rows.plainCell(header.frame())
                : header.frame() < row.cells().size() ? row.cells().get(header.frame()) : null;
        return new NamedRow(row, name == null || name.isBlank() ? null : name.strip(), rows.length());
    }

    /** Rows of one frame, as far as it may be long. */
    private final class Gathering {

        private final TabledFrame frame = new TabledFrame(header, settings);
        private long length;
        private long first;

        void add(NamedRow row) {
            if (first == 0) {
                first = row.row.line();
            }
            // the frame is told of where it is too long, and its row where that is
            length += row.heldLength();
            if (!isTooLong()) {
                frame.add(row.row);
            }
        }

        private boolean isTooLong() {
            return length > JobFiles.LONGEST_LINE || frame.rows() > MOST_ROWS;
        }

        JobFrame end(String name) {
            if (name != null && !seen.add(name)) {
                return refused(
                        "line " + first + ", " + header.sent().get(header.frame()),
                        Violation.Key.FRAME_RETURNS,
                        "rows of this frame stand further up already: the rows of a frame stand together");
            }
            if (isTooLong()) {
                return refused(
                        "line " + first,
                        Violation.Key.TOO_LONG,
                        "the rows of a frame have at most " + JobFiles.LONGEST_LINE
                                + " bytes together, and are at most " + MOST_ROWS);
            }
            return frame.end();
        }

        private JobFrame refused(String place, String key, String message) {
            Violation violation = new Violation(place, key, message, null, null);
            return new JobFrame(first, null, null, ProblemReport.invalid(List.of(violation)));
        }
    }
}
