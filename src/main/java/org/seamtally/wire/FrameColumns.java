package org.seamtally.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.UnitSystem;

/**
 * The columns of a results table: a result line becomes one record, figures for the whole order. The column {@code record}
 * says which of the others are filled: {@code estimate}, {@code problem} or {@code trailer}.
 */
public final class FrameColumns {

    /** What a cell that is text may start with where a spreadsheet takes it for a formula. */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private static final Pattern NEGATIVE = Pattern.compile("-[0-9]+(\\.[0-9]+)?");

    private static final List<String> TRAILER = List.of("read", "done", "refused", "complete");

    private static final List<Column> COLUMNS = columns();

    private final UnitSystem units;

    /** @param units of the result lines */
    public FrameColumns(UnitSystem units) {
        this.units = units;
    }

    /**
     * A column.
     *
     * @param words of its header
     * @param dimension of its quantity, whose unit the header shows; else null
     * @param cell of a result line; null where it stays empty
     */
    private record Column(String words, Dimension dimension, Function<JsonNode, String> cell) {

        String header(UnitSystem units) {
            return dimension == null ? words : words + " [" + unit(units) + "]";
        }

        String unit(UnitSystem units) {
            return dimension.show(0, units).unit();
        }

        String cell(JsonNode line, UnitSystem units) {
            if (dimension == null) {
                return cell.apply(line);
            }
            String shown = cell.apply(line);
            if (shown == null) {
                return null;
            }
            int blank = shown.indexOf(' ');
            if (!shown.substring(blank + 1).equals(unit(units))) {
                throw new IllegalStateException("the column " + header(units) + " was to hold " + shown);
            }
            return shown.substring(0, blank);
        }
    }

    private static List<Column> columns() {
        List<Column> all = new ArrayList<>();
        all.add(new Column("record", null, FrameColumns::kind));
        all.add(number("line", "/line"));
        all.add(text("frame", "/estimate/name"));
        all.add(number("quantity", "/estimate/quantity"));
        all.add(new Column("joints", null, line -> joints(line.at("/estimate/joints"))));
        String order = "/estimate/forQuantity";
        all.add(quantity("seam length", Dimension.LENGTH, order + "/seam/length"));
        all.add(quantity("deposit volume", Dimension.VOLUME, order + "/seam/depositVolume"));
        all.add(number("plugs", order + "/plugs"));
        all.add(quantity("filler deposited", Dimension.MASS, order + "/filler/mass"));
        all.add(quantity("filler consumed", Dimension.MASS, order + "/filler/consumed"));
        all.add(number("rods", order + "/filler/rods"));
        all.add(quantity("arc time", Dimension.TIME, order + "/arc/time"));
        all.add(quantity("tack time", Dimension.TIME, order + "/arc/tackTime"));
        all.add(quantity("arc electricity", Dimension.ELECTRICITY, order + "/arc/energy"));
        all.add(quantity("gas arc", Dimension.GAS_VOLUME, order + "/gas/arc"));
        all.add(quantity("gas pre-flow", Dimension.GAS_VOLUME, order + "/gas/preFlow"));
        all.add(quantity("gas start surge", Dimension.GAS_VOLUME, order + "/gas/startSurge"));
        all.add(quantity("gas post-flow", Dimension.GAS_VOLUME, order + "/gas/postFlow"));
        all.add(quantity("gas back purge", Dimension.GAS_VOLUME, order + "/gas/backPurge"));
        all.add(quantity("gas leak", Dimension.GAS_VOLUME, order + "/gas/leak"));
        all.add(quantity("gas total", Dimension.GAS_VOLUME, order + "/gas/total"));
        all.add(number("gas starts", order + "/gas/starts"));
        all.add(number("gas share welding", "/estimate/gasShares/welding"));
        all.add(number("gas share pre-flow and post-flow", "/estimate/gasShares/preAndPostFlow"));
        all.add(number("gas share surge and leak", "/estimate/gasShares/surgeAndLeak"));
        all.add(quantity("preheat content", Dimension.ENERGY, order + "/preheat/content"));
        all.add(quantity("preheat energy", Dimension.ENERGY, order + "/preheat/energy"));
        all.add(quantity("preheat fuel", Dimension.MASS, order + "/preheat/fuel"));
        all.add(quantity("preheat electricity", Dimension.ELECTRICITY, order + "/preheat/electricity"));
        all.add(quantity("labour arc", Dimension.TIME, order + "/labour/arc"));
        all.add(quantity("labour handling", Dimension.TIME, order + "/labour/handling"));
        all.add(quantity("labour fit-up", Dimension.TIME, order + "/labour/fitUp"));
        all.add(quantity("labour set-up", Dimension.TIME, order + "/labour/setUp"));
        all.add(quantity("labour preheat", Dimension.TIME, order + "/labour/preheat"));
        all.add(quantity("labour total", Dimension.TIME, order + "/labour/total"));
        all.add(text("currency", "/estimate/cost/currency"));
        all.add(text("priced", "/estimate/cost/heading"));
        all.add(text("price per frame", "/estimate/cost/perFrame"));
        all.add(text("price", "/estimate/cost/total"));
        all.add(new Column("cautions", null, line -> cautions(line.path("estimate"))));
        all.add(text("problem", "/problem/type"));
        all.add(text("problem title", "/problem/title"));
        all.add(new Column("violations", null, line -> violations(line.at("/problem/violations"))));
        for (String count : TRAILER) {
            all.add(new Column(count, null, line -> null));
        }
        return List.copyOf(all);
    }

    private static Column number(String words, String pointer) {
        return new Column(words, null, line -> {
            JsonNode node = line.at(pointer);
            return node.isMissingNode() ? null : plain(node);
        });
    }

    private static Column quantity(String words, Dimension dimension, String pointer) {
        return new Column(words, dimension, line -> {
            JsonNode node = line.at(pointer);
            return node.isMissingNode()
                    ? null
                    : plain(node.path("value")) + " " + node.path("unit").textValue();
        });
    }

    private static Column text(String words, String pointer) {
        return new Column(words, null, line -> {
            JsonNode node = line.at(pointer);
            return node.isMissingNode() ? null : node.textValue();
        });
    }

    /** No exponent: 1.2E-5 is text to some spreadsheets. */
    private static String plain(JsonNode number) {
        return new BigDecimal(number.asText()).toPlainString();
    }

    private static String kind(JsonNode line) {
        return line.has("estimate") ? "estimate" : "problem";
    }

    private static String joints(JsonNode joints) {
        if (joints.isMissingNode()) {
            return null;
        }
        long count = 0;
        for (JsonNode joint : joints) {
            count += joint.path("count").longValue();
        }
        return Long.toString(count);
    }

    /** The cautions' words, those of the joints with their marks. */
    private static String cautions(JsonNode estimate) {
        List<String> words = new ArrayList<>();
        for (JsonNode caution : estimate.path("cautions")) {
            words.add(caution.path("cause").textValue());
        }
        for (JsonNode joint : estimate.path("joints")) {
            for (JsonNode caution : joint.path("cautions")) {
                words.add(joint.path("mark").textValue() + " "
                        + caution.path("cause").textValue());
            }
        }
        return words.isEmpty() ? null : String.join("; ", words);
    }

    private static String violations(JsonNode violations) {
        return violations.isMissingNode()
                ? null
                : StreamSupport.stream(violations.spliterator(), false)
                        .map(violation -> violation.path("path").textValue() + " ("
                                + violation.path("key").textValue() + "): "
                                + violation.path("message").textValue())
                        .collect(Collectors.joining("; "));
    }

    /** The first record: each column's words, and its unit in brackets. */
    public List<String> header() {
        return COLUMNS.stream().map(column -> column.header(units)).toList();
    }

    /**
     * A frame's record.
     *
     * @param line result line, JSON in UTF-8
     * @return a cell a column; null where it stays empty
     */
    public List<String> record(byte[] line) {
        JsonNode node = read(line);
        List<String> cells = new ArrayList<>(COLUMNS.size());
        for (Column column : COLUMNS) {
            cells.add(guarded(column.cell(node, units)));
        }
        return cells;
    }

    private static JsonNode read(byte[] line) {
        try {
            return Json.mapper().readTree(line);
        } catch (IOException e) {
            throw new IllegalArgumentException("a result line is JSON", e);
        }
    }

    /** The last record: what was read, estimated and refused, and whether that is all. */
    public List<String> trailer(long read, long done, long refused, boolean complete) {
        List<String> cells = new ArrayList<>(Arrays.asList(new String[COLUMNS.size()]));
        cells.set(0, "trailer");
        int last = COLUMNS.size() - TRAILER.size();
        cells.set(last, Long.toString(read));
        cells.set(last + 1, Long.toString(done));
        cells.set(last + 2, Long.toString(refused));
        cells.set(last + 3, Boolean.toString(complete));
        return cells;
    }

    /** Text that a spreadsheet would run as a formula is told to be text by an apostrophe; numbers stay numbers. */
    private static String guarded(String cell) {
        if (cell == null || cell.isEmpty() || FORMULA_STARTS.indexOf(cell.charAt(0)) < 0) {
            return cell;
        }
        return NEGATIVE.matcher(cell).matches() ? cell : "'" + cell;
    }
}
