package org.seamtally.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A table of the catalogue: a CSV resource in this package, with a header line. */
final class Table {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .setTrim(true)
            .get();

    private Table() {}

    /**
     * Reads every row.
     *
     * @param resource file name beside this class
     * @throws IllegalStateException where the resource is missing
     */
    static List<Row> read(String resource) {
        InputStream in = Table.class.getResourceAsStream(resource);
        if (in == null) {
            throw new IllegalStateException("the catalogue lacks " + resource);
        }
        try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8);
                CSVParser parser = CSVParser.parse(reader, FORMAT)) {
            return parser.getRecords().stream().map(Row::new).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** One row: text and numbers by column name. */
    record Row(CSVRecord cells) {

        String text(String column) {
            return cells.get(column);
        }

        /** @throws NumberFormatException where the cell holds no number */
        double number(String column) {
            return Double.parseDouble(text(column));
        }

        /** Empty where the cell is. */
        OptionalDouble maybeNumber(String column) {
            return text(column).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(column));
        }

        Status status() {
            return Status.of(text("status"));
        }
    }
}
