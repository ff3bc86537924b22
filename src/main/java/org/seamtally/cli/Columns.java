package org.seamtally.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamtally.wire.Figures;

/** Lines of text in aligned columns: words to the left, numbers to the right. */
final class Columns {

    private final List<String[]> rows = new ArrayList<>();
    private final boolean[] right;

    /** @param alignment one letter a column: {@code l} or {@code r} */
    Columns(String alignment) {
        right = new boolean[alignment.length()];
        for (int i = 0; i < right.length; i++) {
            right[i] = alignment.charAt(i) == 'r';
        }
    }

    Columns row(String... cells) {
        if (cells.length != right.length) {
            throw new IllegalArgumentException(cells.length + " cells in " + right.length + " columns");
        }
        rows.add(Arrays.stream(cells)
                .map(cell -> cell.replace(Figures.NO_BREAK, ' '))
                .toArray(String[]::new));
        return this;
    }

    /** A rule across all columns. */
    Columns rule() {
        rows.add(null);
        return this;
    }

    void print(PrintWriter out) {
        int[] widths = new int[right.length];
        for (String[] row : rows) {
            for (int i = 0; row != null && i < row.length; i++) {
                widths[i] = Math.max(widths[i], row[i].length());
            }
        }
        int cells = 0;
        for (int width : widths) {
            cells += width;
        }
        // long marks and US units together would not fit a sheet otherwise
        int gap = cells + 2 * (widths.length - 1) > EstimateTable.WIDTH ? 1 : 2;
        int all = cells + gap * (widths.length - 1);
        for (String[] row : rows) {
            out.println(row == null ? "-".repeat(all) : line(row, widths, " ".repeat(gap)));
        }
    }

    private String line(String[] row, int[] widths, String gap) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < row.length; i++) {
            String pad = " ".repeat(widths[i] - row[i].length());
            line.append(i == 0 ? "" : gap).append(right[i] ? pad + row[i] : row[i] + pad);
        }
        return line.toString().stripTrailing();
    }
}
