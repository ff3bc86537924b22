package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** One frame of a job table in the making: its rows become a request as they come, and are not kept. */
public final class TabledFrame {

    private static final String JOINTS = "frame.joints";

    private final JobHeader header;
    private final ByteArrayOutputStream request = new ByteArrayOutputStream();
    private final JsonGenerator generator;
    private final List<Long> lines = new ArrayList<>();
    private final List<Violation> faults = new ArrayList<>();
    private String open = "";
    private String name;
    private String quantity;

    /** @param settings that its request takes */
    public TabledFrame(JobHeader header, JobSettings settings) {
        this.header = header;
        try {
            generator = Json.mapper().createGenerator(request);
            generator.writeStartObject();
            settings.write(generator);
            generator.writeObjectFieldStart("frame");
            generator.writeArrayFieldStart("joints");
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
    }

    /** Rows so far. */
    public int rows() {
        return lines.size();
    }

    /** Adds a row. */
    public void add(JobRow row) {
        int joint = lines.size();
        lines.add(row.line());
        String where = JOINTS + "[" + joint + "]";
        try {
            generator.writeStartObject();
            if (row.key() != null) {
                fault(new Violation(where, row.key(), row.message(), null, null));
            } else if (row.cells().size() != header.columns().size()) {
                fault(cells(where, row.cells().size()));
            } else {
                ofFrame(where, row.cells());
                for (int column : header.written()) {
                    write(where, column, row.cells().get(column).strip());
                }
                openParts("");
            }
            generator.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
    }

    private Violation cells(String where, int given) {
        return new Violation(
                where,
                Violation.Key.CELLS,
                header.columns().size()
                        + " cells are due, as in the header (a decimal comma makes two cells of one number)",
                given + " of them",
                null);
    }

    private void ofFrame(String where, List<String> cells) {
        String own = cells.get(header.frame()).strip();
        if (own.isEmpty()) {
            fault(new Violation(
                    where + "." + JobColumns.FRAME, Violation.Key.MISSING, "each row names its frame", null, null));
        } else {
            name = own;
            addFault(where, header.frame(), own);
        }
        String count = header.quantity() < 0 ? "" : cells.get(header.quantity()).strip();
        if (quantity == null) {
            quantity = count;
            addFault(where, header.quantity(), count);
        } else if (!count.isEmpty() && !count.equals(quantity)) {
            fault(new Violation(
                    where + "." + JobColumns.QUANTITY,
                    Violation.Key.CONTRADICTION,
                    "all rows of a frame have the quantity of the first, or none",
                    JobColumn.given(count),
                    null));
        }
    }

    private void fault(Violation fault) {
        // what is past this is not told
        if (faults.size() < RequestReader.MOST_TOLD) {
            faults.add(fault);
        }
    }

    private boolean addFault(String where, int column, String cell) {
        if (cell.isEmpty()) {
            return false;
        }
        JobColumn kind = header.columns().get(column);
        Violation fault =
                kind.cellFault(where + "." + kind.path(), cell, header.units().get(column));
        if (fault != null) {
            fault(fault);
        }
        return fault != null;
    }

    private void write(String where, int index, String cell) throws IOException {
        if (cell.isEmpty()) {
            return;
        }
        JobColumn column = header.columns().get(index);
        int end = column.path().lastIndexOf('.');
        // a part is there with a faulty cell too: what else it lacks is told
        openParts(end < 0 ? "" : column.path().substring(0, end));
        if (!addFault(where, index, cell)) {
            generator.writeFieldName(column.path().substring(end + 1));
            column.write(generator, cell, header.units().get(index));
        }
    }

    /** Ends the parts that a path does not lie in, and begins those that it lies in. */
    private void openParts(String path) throws IOException {
        while (!open.isEmpty() && !(path + ".").startsWith(open + ".")) {
            generator.writeEndObject();
            open = open.substring(0, Math.max(0, open.lastIndexOf('.')));
        }
        while (open.length() < path.length()) {
            int start = open.isEmpty() ? 0 : open.length() + 1;
            int end = path.indexOf('.', start);
            String next = path.substring(0, end < 0 ? path.length() : end);
            generator.writeObjectFieldStart(next.substring(start));
            open = next;
        }
    }

    /** The frame with all its rows. */
    public JobFrame end() {
        JobFrame.Places places = new JobFrame.Places(lines, header.sent());
        long first = lines.get(0);
        byte[] whole = request();
        return faults.isEmpty()
                ? new JobFrame(first, whole, places, null)
                : new JobFrame(first, null, null, JobColumns.placed(ProblemReport.invalid(all(whole)), places));
    }

    private byte[] request() {
        try {
            generator.writeEndArray();
            if (name != null) {
                generator.writeStringField("name", name);
            }
            if (quantity != null && !quantity.isEmpty()) {
                generator.writeFieldName(JobColumns.QUANTITY);
                header.columns().get(header.quantity()).write(generator, quantity, null);
            }
            generator.writeEndObject();
            generator.writeEndObject();
            generator.close();
            return request.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
    }

    /** What is wrong with the cells, and what is wrong with the request that the others make, all at once. */
    private List<Violation> all(byte[] whole) {
        List<Violation> all = new ArrayList<>(faults);
        try {
            RequestReader.read(new ByteArrayInputStream(whole), FrameEstimateRequest.class);
        } catch (RefusedException e) {
            e.problem().violations().stream().filter(this::isNews).forEach(all::add);
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be fetched", e);
        }
        return RequestReader.sorted(all);
    }

    /** Whether a violation is none that comes of leaving a faulty cell or row out. */
    private boolean isNews(Violation violation) {
        return faults.stream()
                .noneMatch(fault -> isIn(violation.path(), fault.path())
                        || violation.key().equals(Violation.Key.MISSING) && isIn(fault.path(), violation.path()));
    }

    private static boolean isIn(String path, String part) {
        return path.equals(part) || path.startsWith(part + ".");
    }
}
