package org.seamtally.batch;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seamtally.wire.JobRow;
import org.seamtally.wire.Violation;

/**
 * Rows of a CSV file (RFC 4180); lines end with LF, CR LF or CR. The library that reads cells holds a whole row, and has lost
 * its place after a broken one: so rows are cut here, as far as a limit, and it gets one at a time.
 */
final class CsvRows {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180;

    private final ByteSource source;
    private final CutBytes row = new CutBytes(JobFiles.LONGEST_LINE);
    private long line = 1;
    private long start;
    private boolean openQuote;

    CsvRows(ByteSource source) {
        this.source = source;
    }

    /** The next row that has anything in it; null after the last. */
    JobRow next() throws IOException {
        while (source.isMore()) {
            cut();
            JobRow read = row();
            if (read.cells() == null || read.cells().stream().anyMatch(cell -> !cell.isBlank())) {
                return read;
            }
        }
        return null;
    }

    /** Bytes of the latest row. */
    long length() {
        return row.length();
    }

    /** The latest row's cell of that number, as far as it can be told without reading the whole row; null where it cannot. */
    String plainCell(int index) {
        int held = (int) Math.min(row.length(), JobFiles.LONGEST_LINE);
        String[] cells = new String(row.first(held), StandardCharsets.UTF_8).split(",", index + 2);
        for (int i = 0; i <= index; i++) {
            if (i == cells.length - 1 || cells[i].indexOf('"') >= 0) {
                return null;
            }
        }
        return cells[index];
    }

    private void cut() throws IOException {
        row.clear();
        start = line;
        openQuote = false;
        boolean cellStart = true;
        for (int letter = source.next(); letter >= 0; letter = source.next()) {
            if (letter == '\n' || letter == '\r' && source.peek() != '\n') {
                line++;
            }
            if (openQuote) {
                openQuote = letter != '"';
                row.add(letter);
                if (!openQuote && source.peek() == '"') {
                    openQuote = true;
                    row.add(source.next());
                }
            } else if (letter == '\n') {
                return;
            } else if (letter == '\r') {
                if (source.peek() == '\n') {
                    source.next();
                    line++;
                }
                return;
            } else {
                openQuote = letter == '"' && cellStart;
                cellStart = letter == ',';
                row.add(letter);
            }
        }
    }

    private JobRow row() throws IOException {
        if (openQuote) {
            return JobRow.broken(
                    start,
                    Violation.Key.QUOTES,
                    "a cell's quote is never closed: nothing after it could be read, and reading ended here");
        }
        if (row.isCut()) {
            return JobRow.broken(
                    start,
                    Violation.Key.TOO_LONG,
                    "a row of " + row.length() + " bytes: at most " + JobFiles.LONGEST_LINE + " are read");
        }
        String text = new String(row.first((int) row.length()), StandardCharsets.UTF_8);
        if (text.isBlank()) {
            return JobRow.of(start, List.of());
        }
        try (CSVParser parser = CSVParser.parse(new StringReader(text), FORMAT)) {
            List<CSVRecord> records = parser.getRecords();
            if (records.size() == 1) {
                return JobRow.of(start, records.get(0).toList());
            }
        } catch (IOException | java.io.UncheckedIOException e) {
            // memory can always be read: it is the quotes that the library complains of
        }
        return JobRow.broken(
                start, Violation.Key.QUOTES, "the quotes of a cell are broken: \"…\" around it, \"\" for one in it");
    }
}
