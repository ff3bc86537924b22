package org.seamtally.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * The header of a job table.
 *
 * @param sent the header's cells, as they were sent
 * @param columns by the cells' order
 * @param units of the columns, by the same order; null where it has none
 * @param frame index of the column of frames' names
 * @param quantity index of the column of frames in the order; -1 where there is none
 * @param written indexes of the joints' columns, parts of a request together, the kind first
 */
public record JobHeader(
        List<String> sent,
        List<JobColumn> columns,
        List<String> units,
        int frame,
        int quantity,
        List<Integer> written) {

    // more would be no help
    private static final int MOST_TOLD = 100;

    /**
     * Reads a header. Case and runs of blanks do not matter.
     *
     * @param line it stands in
     * @throws RefusedException with everything that is wrong with it
     */
    public static JobHeader read(List<String> cells, long line) throws RefusedException {
        String where = "line " + line;
        refuseOtherSeparators(cells, where);
        List<Violation> faults = new ArrayList<>();
        List<JobColumn> columns = new ArrayList<>();
        List<String> units = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < cells.size(); i++) {
            Cell cell = Cell.of(cells.get(i));
            JobColumn column = JobColumns.find(cell.words);
            columns.add(column);
            units.add(cell.unit);
            Violation fault = fault(cell, column, where + ", column " + (i + 1), cells.get(i));
            if (fault == null && !seen.add(cell.words)) {
                fault = new Violation(
                        where + ", column " + (i + 1),
                        Violation.Key.DUPLICATE,
                        "this column stands twice",
                        JobColumn.given(cells.get(i)),
                        null);
            }
            if (fault != null && faults.size() < MOST_TOLD) {
                faults.add(fault);
            }
        }
        for (String needed : List.of(JobColumns.FRAME, JobColumns.KIND)) {
            if (columns.stream()
                    .noneMatch(column -> column != null && column.words().equals(needed))) {
                faults.add(new Violation(
                        where + ", " + needed, Violation.Key.MISSING, "a table needs this column", null, null));
            }
        }
        if (!faults.isEmpty()) {
            throw new RefusedException(ProblemReport.invalid(faults));
        }
        return new JobHeader(
                List.copyOf(cells),
                columns,
                units,
                indexOf(columns, JobColumns.FRAME),
                indexOf(columns, JobColumns.QUANTITY),
                written(columns));
    }

    private static void refuseOtherSeparators(List<String> cells, String where) throws RefusedException {
        String first = cells.get(0);
        boolean semicolons = first.indexOf(';') >= 0;
        if (cells.size() == 1 && (semicolons || first.indexOf('\t') >= 0)) {
            throw new RefusedException(ProblemReport.invalid(List.of(new Violation(
                    where,
                    Violation.Key.NOT_THIS_FORM,
                    "the cells are separated by " + (semicolons ? "semicolons" : "tabs")
                            + ": export with commas between cells and points in decimals",
                    JobColumn.given(first),
                    null))));
        }
    }

    private static Violation fault(Cell cell, JobColumn column, String where, String sent) {
        if (column != null) {
            return column.unitFault(where, sent, cell.unit);
        }
        String nearest = Nearest.to(cell.words, JobColumns.words());
        return new Violation(
                where,
                Violation.Key.UNKNOWN_FIELD,
                "no such column" + (nearest == null ? "" : "; the nearest is \"" + nearest + "\""),
                JobColumn.given(sent),
                JobColumns.words());
    }

    private static int indexOf(List<JobColumn> columns, String words) {
        return IntStream.range(0, columns.size())
                .filter(i -> columns.get(i).words().equals(words))
                .findFirst()
                .orElse(-1);
    }

    private static List<Integer> written(List<JobColumn> columns) {
        return IntStream.range(0, columns.size())
                .filter(i -> !columns.get(i).words().equals(JobColumns.FRAME)
                        && !columns.get(i).words().equals(JobColumns.QUANTITY))
                .boxed()
                // a point sorts before any letter: what belongs to a part comes together
                .sorted(Comparator.comparing(
                                (Integer i) -> !columns.get(i).path().equals(JobColumns.KIND))
                        .thenComparing(i -> columns.get(i).path()))
                .toList();
    }

    /**
     * A header's cell.
     *
     * @param words in small letters, blanks between them
     * @param unit as it stands in brackets; null where there are none
     */
    record Cell(String words, String unit) {

        private static final Pattern WITH_UNIT = Pattern.compile("([^\\[\\]]*)\\[([^\\[\\]]*)]");

        private static final Pattern BLANKS = Pattern.compile("[\\s\\h]+");

        static Cell of(String sent) {
            String trimmed = BLANKS.matcher(sent).replaceAll(" ").strip();
            Matcher unit = WITH_UNIT.matcher(trimmed);
            return unit.matches()
                    ? new Cell(folded(unit.group(1)), unit.group(2).strip())
                    : new Cell(folded(trimmed), null);
        }

        private static String folded(String words) {
            return words.strip().toLowerCase(Locale.ROOT);
        }
    }
}
