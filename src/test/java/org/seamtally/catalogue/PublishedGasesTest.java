package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PublishedGasesTest {

    private static GasSpecies species(String name) {
        return Gases.species().stream()
                .filter(gas -> gas.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Density at 1 atm and 0, 15 and 25 °C from the reference equations of state (argon: Tegeler, Span and Wagner 1999;
     * helium: the same collection's), kg/m³. The ideal gas of the molar mass agrees within 0.1 %, its departure there.
     */
    @ParameterizedTest(name = "{0} at {1} K")
    @CsvSource({
        "argon, 273.15, 1.78396",
        "argon, 288.15, 1.69075",
        "argon, 298.15, 1.63386",
        "helium, 273.15, 0.17848",
        "helium, 288.15, 0.16920",
        "helium, 298.15, 0.16352",
    })
    void molarMassGivesTheDensity(String name, double kelvin, double density) {
        double ideal = 101_325 * species(name).molarMass() / (8.314462618 * kelvin);
        assertEquals(density, ideal, density * 1e-3);
    }

    /** Lemmon and Jacobsen 2004, evaluated at 20 °C and 1 atm: 22.307 µPa·s. */
    @Test
    void viscosityOfArgon() {
        assertEquals(22.307e-6, species("argon").viscosity(), 0.01e-6);
    }

    /** Handbook of Chemistry and Physics, from memory: 19.9 µPa·s at 300 K; it goes with T to the 0.7. */
    @Test
    void viscosityOfHelium() {
        assertEquals(19.9e-6 * Math.pow(293.15 / 300, 0.7), species("helium").viscosity(), 0.05e-6);
    }

    /** Kinetic theory: a monatomic gas has 5/3. */
    @Test
    void monatomicGases() {
        for (GasSpecies gas : Gases.species()) {
            assertEquals(5.0 / 3, gas.heatCapacityRatio());
        }
    }

    /** ISO 14175:2008, from memory: I1 is argon, I2 helium, I3 argon with helium. */
    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "argon, I1, 1, 0",
        "helium, I2, 0, 1",
        "argon-25-helium, I3-ArHe-25, 0.75, 0.25",
        "argon-50-helium, I3-ArHe-50, 0.5, 0.5",
        "argon-75-helium, I3-HeAr-25, 0.25, 0.75",
    })
    void mixtures(String name, String designation, double argon, double helium) {
        ShieldingGas gas = Gases.find(name).orElseThrow();
        assertEquals(name, gas.name());
        assertEquals(designation, Gases.designation(gas));
        assertEquals(gas, Gases.find(designation.toLowerCase()).orElseThrow());
        assertEquals(argon, share(gas, "argon"));
        assertEquals(helium, share(gas, "helium"));
    }

    private static double share(ShieldingGas gas, String species) {
        return gas.parts().stream()
                .filter(part -> part.gas().name().equals(species))
                .mapToDouble(ShieldingGas.Part::moleFraction)
                .sum();
    }

    /** Density of 75 Ar/25 He at 0 °C and 1 atm by mixing of real molar volumes: 1.38214 kg/m³. */
    @Test
    void aMixturesDensity() {
        double molarMass = Gases.find("argon-25-helium").orElseThrow().parts().stream()
                .mapToDouble(part -> part.moleFraction() * part.gas().molarMass())
                .sum();
        assertEquals(1.38214, 101_325 * molarMass / (8.314462618 * 273.15), 1.4e-3);
    }

    /** Common practice, no source: active gases burn the tungsten, hydrogen cracks these steels. */
    @Test
    void onlyInertGases() {
        Set<String> names = Gases.species().stream().map(GasSpecies::name).collect(Collectors.toSet());
        assertEquals(Set.of("argon", "helium"), names);
        assertTrue(Gases.find("carbon dioxide").isEmpty());
    }

    @Test
    void everyRowHasASource() {
        assertEquals(5, Gases.all().size());
        for (ShieldingGas gas : Gases.all()) {
            assertTrue(gas.source().startsWith("ISO 14175"), gas.name());
            assertEquals(Status.FROM_MEMORY, gas.status());
        }
        for (GasSpecies gas : Gases.species()) {
            assertTrue(gas.source().contains("CIAAW"), gas.name());
            assertEquals(Status.FROM_MEMORY, gas.status());
        }
    }

    @Test
    void aGasOfOnesOwnHasNoDesignation() {
        ShieldingGas own = new ShieldingGas(
                "own", List.of(new ShieldingGas.Part(species("argon"), 1)), "no source", Status.COMMON_PRACTICE);
        assertThrows(IllegalArgumentException.class, () -> Gases.designation(own));
    }
}
