package org.seamtally.batch;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.FrameColumns;

/** Results as a table by RFC 4180, a frame a record, the last one the trailer. */
public final class CsvResults implements ResultSink {

    private final FrameColumns columns;
    private final CSVPrinter printer;
    private boolean headed;

    /**
     * @param out is flushed, and not closed
     * @param units of the result lines
     */
    public CsvResults(OutputStream out, UnitSystem units) throws IOException {
        this(out, units, false);
    }

    /**
     * Goes on with a table.
     *
     * @param out is flushed, and not closed
     * @param units of the result lines
     * @param headed whether the header is written already
     */
    public CsvResults(OutputStream out, UnitSystem units, boolean headed) throws IOException {
        this.headed = headed;
        columns = new FrameColumns(units);
        printer = new CSVPrinter(
                new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8), NdjsonResults.BUFFER),
                CSVFormat.RFC4180);
    }

    @Override
    public void line(byte[] json) throws IOException {
        head();
        printer.printRecord(columns.record(json));
    }

    @Override
    public void flush() throws IOException {
        printer.flush();
    }

    @Override
    public void end(Counts counts, boolean complete) throws IOException {
        head();
        printer.printRecord(columns.trailer(counts.read(), counts.done(), counts.refused(), complete));
        flush();
    }

    private void head() throws IOException {
        if (!headed) {
            headed = true;
            printer.printRecord(columns.header());
        }
    }
}
