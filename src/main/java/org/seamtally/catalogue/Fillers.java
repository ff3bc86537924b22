package org.seamtally.catalogue;

import java.util.List;
import java.util.Optional;

/** The filler rods of the catalogue, read from {@code fillers.csv}. */
public final class Fillers {

    private static final List<Filler> ALL =
            Table.read("fillers.csv").stream().map(Fillers::filler).toList();

    private Fillers() {}

    /** Every filler, in the table's order. */
    public static List<Filler> all() {
        return ALL;
    }

    /** The filler of that classification, upper or lower case; empty where the catalogue has none. */
    public static Optional<Filler> find(String classification) {
        return ALL.stream()
                .filter(filler -> filler.classification().equalsIgnoreCase(classification))
                .findFirst();
    }

    private static Filler filler(Table.Row row) {
        String unit = row.text("strength_unit");
        return new Filler(
                row.text("classification"),
                row.text("title"),
                Analysis.limits(row.text("limits")),
                Analysis.composition(row.text("typical")),
                Strength.pascals(row.maybeNumber("tensile_min"), unit),
                Strength.pascals(row.maybeNumber("yield_min"), unit),
                row.text("test_condition"),
                row.text("standard"),
                row.text("source"),
                row.status());
    }
}
