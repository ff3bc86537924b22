package org.seamtally.catalogue;

import java.util.List;
import java.util.Optional;
import org.seamtally.quantity.Dimension;

/** The usual sizes of round tube, read from {@code tubes.csv}. Others can be made: this list limits nothing. */
public final class Tubes {

    private static final List<TubeSize> ALL =
            Table.read("tubes.csv").stream().map(Tubes::size).toList();

    private Tubes() {}

    /** Every size, in the table's order: inch sizes, then metric ones, each by diameter and wall. */
    public static List<TubeSize> all() {
        return ALL;
    }

    /** The size of that designation, such as {@code 1-1/2 x 0.095 in}; empty where the catalogue has none. */
    public static Optional<TubeSize> find(String designation) {
        return ALL.stream()
                .filter(size -> size.designation().equalsIgnoreCase(designation))
                .findFirst();
    }

    private static TubeSize size(Table.Row row) {
        return new TubeSize(
                row.text("designation"),
                Dimension.LENGTH.read(row.text("outside_diameter")),
                Dimension.LENGTH.read(row.text("wall")),
                row.text("source"),
                row.status());
    }
}
