package org.seamtally.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.quantity.Dimension;

/** The fuels of the catalogue, read from {@code fuels.csv}. */
public final class Fuels {

    private static final List<Fuel> ALL =
            Table.read("fuels.csv").stream().map(Fuels::fuel).toList();

    private Fuels() {}

    /** Every fuel, in the table's order. */
    public static List<Fuel> all() {
        return ALL;
    }

    /** The fuel of that name, upper or lower case; empty where the catalogue has none. */
    public static Optional<Fuel> find(String name) {
        return ALL.stream().filter(fuel -> fuel.name().equalsIgnoreCase(name)).findFirst();
    }

    private static Fuel fuel(Table.Row row) {
        return new Fuel(
                row.text("name"),
                Dimension.HEAT_CONTENT.read(row.text("lower_heating_value")),
                OptionalDouble.of(Dimension.DENSITY.read(row.text("gas_density"))),
                sold(row.text("sold_by")),
                row.text("source"),
                row.status());
    }

    private static Fuel.Sold sold(String word) {
        return switch (word) {
            case "mass" -> Fuel.Sold.BY_MASS;
            case "volume" -> Fuel.Sold.BY_VOLUME;
            default -> throw new IllegalStateException("fuels are sold by mass or by volume, not by " + word);
        };
    }
}
