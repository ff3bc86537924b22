package org.seamtally.catalogue;

import java.util.List;
import java.util.Optional;

/** The base steels of the catalogue, read from {@code steels.csv}. */
public final class Steels {

    private static final List<Steel> ALL =
            Table.read("steels.csv").stream().map(Steels::steel).toList();

    private Steels() {}

    /** Every steel, in the table's order. */
    public static List<Steel> all() {
        return ALL;
    }

    /** The steel of that name, upper or lower case; empty where the catalogue has none. */
    public static Optional<Steel> find(String name) {
        return ALL.stream().filter(steel -> steel.name().equalsIgnoreCase(name)).findFirst();
    }

    private static Steel steel(Table.Row row) {
        String unit = row.text("strength_unit");
        String normalizedForm = row.text("normalized_form");
        return new Steel(
                row.text("name"),
                row.text("title"),
                HeatTreatment.of(row.text("heat_treatment")),
                Analysis.limits(row.text("limits")),
                Analysis.composition(row.text("typical")),
                Strength.pascals(row.maybeNumber("tensile_min"), unit),
                Strength.pascals(row.maybeNumber("tensile_max"), unit),
                Strength.pascals(row.maybeNumber("yield_min"), unit),
                normalizedForm.isEmpty() ? Optional.empty() : Optional.of(normalizedForm),
                row.text("standard"),
                row.text("source"),
                row.status());
    }
}
