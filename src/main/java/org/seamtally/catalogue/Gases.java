package org.seamtally.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The shielding gases of the catalogue, read from {@code shielding-gases.csv} and {@code gas-species.csv}. */
public final class Gases {

    private static final List<GasSpecies> SPECIES =
            Table.read("gas-species.csv").stream().map(Gases::species).toList();
    private static final List<Named> ALL =
            Table.read("shielding-gases.csv").stream().map(Gases::named).toList();

    private Gases() {}

    /** Every shielding gas, in the table's order. */
    public static List<ShieldingGas> all() {
        return ALL.stream().map(Named::gas).toList();
    }

    /** Every pure gas that one of them holds. */
    public static List<GasSpecies> species() {
        return SPECIES;
    }

    /**
     * The gas of that name ({@code argon}) or ISO 14175 designation ({@code I1}), upper or lower case; empty where the
     * catalogue has none.
     */
    public static Optional<ShieldingGas> find(String name) {
        return ALL.stream()
                .filter(named -> named.isCalled(name))
                .map(Named::gas)
                .findFirst();
    }

    /**
     * The ISO 14175 designation of a gas of this catalogue, such as {@code I3-ArHe-25}.
     *
     * @throws IllegalArgumentException where the gas is another's
     */
    public static String designation(ShieldingGas gas) {
        return ALL.stream()
                .filter(named -> named.gas().equals(gas))
                .map(Named::designation)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the catalogue has no gas " + gas.name()));
    }

    private static GasSpecies species(Table.Row row) {
        return new GasSpecies(
                row.text("name"),
                row.number("molar_mass") / 1000,
                row.number("heat_capacity_ratio"),
                row.number("viscosity") / 1e6,
                row.text("source"),
                row.status());
    }

    private static Named named(Table.Row row) {
        List<ShieldingGas.Part> parts =
                Arrays.stream(row.text("parts").split(";")).map(Gases::part).toList();
        return new Named(
                new ShieldingGas(row.text("name"), parts, row.text("source"), row.status()), row.text("designation"));
    }

    /** "helium 25": the pure gas and its share in per cent. */
    private static ShieldingGas.Part part(String text) {
        String[] words = text.strip().split(" ");
        GasSpecies gas = SPECIES.stream()
                .filter(species -> species.name().equals(words[0]))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no pure gas is called " + words[0]));
        return new ShieldingGas.Part(gas, Double.parseDouble(words[1]) / 100);
    }

    private record Named(ShieldingGas gas, String designation) {

        boolean isCalled(String name) {
            return gas.name().equalsIgnoreCase(name) || designation.equalsIgnoreCase(name);
        }
    }
}
