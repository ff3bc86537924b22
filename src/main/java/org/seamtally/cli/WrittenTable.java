package org.seamtally.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.seamtally.batch.Counts;

/** Results as a table: a record a frame, which may have line ends within quotes. */
final class WrittenTable implements WrittenResults.Lines {

    private final InputStream in;
    private List<String> header;
    private long position;

    WrittenTable(InputStream in) {
        this.in = in;
    }

    @Override
    public WrittenResults.Line next() throws IOException {
        ByteArrayOutputStream record = new ByteArrayOutputStream();
        boolean quoted = false;
        for (int b = in.read(); b >= 0; b = in.read()) {
            record.write(b);
            // a quote within quotes is written twice, and changes nothing in the end
            quoted ^= b == '"';
            if (b == '\n' && !quoted) {
                position += record.size();
                return line(record.toString(UTF_8));
            }
        }
        return record.size() == 0 ? null : new WrittenResults.Torn();
    }

    @Override
    public long position() {
        return position;
    }

    private WrittenResults.Line line(String text) throws IOException {
        List<String> cells;
        try (CSVParser parser = CSVParser.parse(text, CSVFormat.RFC4180)) {
            List<CSVRecord> records = parser.getRecords();
            cells = records.size() == 1 ? records.get(0).toList() : List.of();
        } catch (UncheckedIOException e) {
            // what the library throws where quotes are not as they should be
            return new WrittenResults.Foreign();
        }
        if (header == null) {
            header = cells;
            return header.contains("record") && header.contains("line")
                    ? new WrittenResults.Header()
                    : new WrittenResults.Foreign();
        }
        try {
            return switch (cell(cells, "record")) {
                case "estimate" -> new WrittenResults.Result(Long.parseLong(cell(cells, "line")), false);
                case "problem" -> new WrittenResults.Result(Long.parseLong(cell(cells, "line")), true);
                case "trailer" -> trailer(cells);
                default -> new WrittenResults.Foreign();
            };
        } catch (IllegalArgumentException e) {
            return new WrittenResults.Foreign();
        }
    }

    private WrittenResults.Line trailer(List<String> cells) {
        return Boolean.parseBoolean(cell(cells, "complete"))
                ? new WrittenResults.Trailer(new Counts(
                        Long.parseLong(cell(cells, "read")),
                        Long.parseLong(cell(cells, "done")),
                        Long.parseLong(cell(cells, "refused"))))
                : new WrittenResults.Foreign();
    }

    private String cell(List<String> cells, String column) {
        int at = header.indexOf(column);
        return at < 0 || at >= cells.size() ? "" : cells.get(at);
    }
}
