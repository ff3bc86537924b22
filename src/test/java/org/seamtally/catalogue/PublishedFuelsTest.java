package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Heating values from enthalpies of formation at 298.15 K, Active Thermochemical Tables (ATcT) 1.112, J/mol; molar
 * masses from CIAAW's conventional atomic weights (C 12.011, H 1.008, O 15.999), from memory.
 */
class PublishedFuelsTest {

    private static final double CARBON_DIOXIDE = -393_474;
    private static final double WATER_VAPOUR = -241_822;

    private static double molarMass(int carbon, int hydrogen) {
        return (carbon * 12.011 + hydrogen * 1.008) / 1000;
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "propane, 3, 8, -104390",
        "butane, 4, 10, -125850",
        "propylene, 3, 6, 20370",
        "acetylene, 2, 2, 228320",
        "methane, 1, 4, -74534",
        "hydrogen, 0, 2, 0",
    })
    void heatingValueAndDensity(String name, int carbon, int hydrogen, double formation) {
        Fuel fuel = Fuels.find(name).orElseThrow();
        double molar = formation - carbon * CARBON_DIOXIDE - hydrogen / 2.0 * WATER_VAPOUR;
        double molarMass = molarMass(carbon, hydrogen);
        // the table has five or six digits
        assertEquals(molar / molarMass, fuel.lowerHeatingValue(), 1000);
        // ideal gas, CODATA 2018 gas constant, 288.15 K, 101 325 Pa
        double density = 101_325 * molarMass / (8.314462618 * 288.15);
        assertEquals(density, fuel.gasDensity().getAsDouble(), density * 1e-4);
    }

    /** Printed in many fuel tables, from memory: propane's lower heating value is 46.35 MJ/kg, methane's 50.0. */
    @ParameterizedTest
    @CsvSource({"propane, 46.35e6", "methane, 50.0e6", "hydrogen, 120.0e6", "acetylene, 48.2e6"})
    void handbookHeatingValues(String name, double handbook) {
        assertEquals(handbook, Fuels.find(name).orElseThrow().lowerHeatingValue(), handbook * 2e-3);
    }

    @Test
    void howEachIsSold() {
        Set<String> byMass = Fuels.all().stream()
                .filter(fuel -> fuel.sold() == Fuel.Sold.BY_MASS)
                .map(Fuel::name)
                .collect(Collectors.toSet());
        assertEquals(Set.of("propane", "butane", "propylene"), byMass);
        assertEquals(6, Fuels.all().size());
    }

    @Test
    void everyRowHasASource() {
        for (Fuel fuel : Fuels.all()) {
            assertTrue(fuel.source().contains("ATcT"), fuel.name());
            assertEquals(Status.COMPUTED, fuel.status());
            assertEquals(fuel, Fuels.find(fuel.name().toUpperCase()).orElseThrow());
        }
        assertTrue(Fuels.find("electricity").isEmpty());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void whatDoesNotBurnIsNoFuel(double figure) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Fuel("x", figure, OptionalDouble.of(1), Fuel.Sold.BY_MASS, "", Status.READ));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Fuel("x", 1, OptionalDouble.of(figure), Fuel.Sold.BY_MASS, "", Status.READ));
    }

    @Test
    void onlyAWeighedFuelMayLackItsGasDensity() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Fuel("x", 1, OptionalDouble.empty(), Fuel.Sold.BY_VOLUME, "", Status.READ));
        assertTrue(new Fuel("x", 1, OptionalDouble.empty(), Fuel.Sold.BY_MASS, "", Status.READ)
                .gasDensity()
                .isEmpty());
    }
}
