package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.catalogue.GasSpecies;
import org.seamtally.catalogue.ShieldingGas;
import org.seamtally.catalogue.Status;

class PublishedGasPropertiesTest {

    private static final GasSpecies HELIUM = species("helium", 0.0040026, 5.0 / 3, 19.6e-6);
    private static final GasSpecies CARBON_DIOXIDE = species("carbon dioxide", 0.04401, 1.293, 14.7e-6);

    @Test
    void argonHasTheGasConstantOfItsMolarMass() {
        // 8.314462618/0.039948 (CODATA 2018, IUPAC): 208.132
        assertEquals(208.132, Rig.ARGON.gasConstant(), 0.0005);
        assertEquals(5.0 / 3, Rig.ARGON.heatCapacityRatio(), 1e-15);
        assertEquals(22.3e-6, Rig.ARGON.viscosity(), 1e-18);
    }

    @Test
    void argonChokesAtTheRatioAndFactorOfIso9300() {
        // ISO 9300's critical flow function for an ideal gas of γ = 5/3, computed: 0.726184, p*/p0 0.487139
        assertEquals(0.726184, Rig.ARGON.criticalFlowFactor(), 5e-7);
        assertEquals(0.487139, Rig.ARGON.criticalPressureRatio(), 5e-7);
    }

    @Test
    void airChokesAtTheRatioOfEveryTextbook() {
        // γ = 1.4: 0.5283, C* 0.6847 (fluid mechanics, from memory)
        GasProperties air = new GasProperties(287.05, 1.4, 18e-6);
        assertEquals(0.5283, air.criticalPressureRatio(), 5e-5);
        assertEquals(0.6847, air.criticalFlowFactor(), 5e-5);
    }

    @ParameterizedTest
    @CsvSource({
        // temperature, density at 1 atm: equation of state of Tegeler, Span and Wagner 1999, computed from its
        // coefficients; a real gas is up to 0.1 % denser than the ideal one
        "273.15, 1.78396",
        "288.15, 1.69075",
        "293.15, 1.66182",
        "294.26111, 1.65553",
        "298.15, 1.63386"
    })
    void argonIsAsDenseAsItsEquationOfStateSays(double temperature, double density) {
        assertEquals(density, new ReferenceState(temperature).density(Rig.ARGON), 1.0e-3 * density);
    }

    @Test
    void aPoundOfArgonIsTheTradesStandardCubicFeet() {
        // CGA, from memory: 9.67 scf/lb at 70 °F and 1 atm, as 1/0.1034 lb/ft³, four digits
        double poundsPerCubicFoot = new ReferenceState(Rig.F70).density(Rig.ARGON) * Rig.CUBIC_FOOT / 0.45359237;
        assertEquals(9.67, 1 / poundsPerCubicFoot, 0.015);
    }

    @ParameterizedTest
    @CsvSource({
        // other part, its mole fraction, density of the mixture with argon at 70 °F and 1 atm by ideal mixing of the
        // pure gases' real volumes (computed from their equations of state)
        "helium, 0.25, 1.28274",
        "carbon dioxide, 0.25, 1.69956",
        "carbon dioxide, 0.02, 1.65904"
    })
    void mixturesAreAsDenseAsTheirParts(String other, double fraction, double density) {
        GasProperties mixture = GasProperties.of(
                mixture(Rig.ARGON_SPECIES, 1 - fraction, other.equals("helium") ? HELIUM : CARBON_DIOXIDE, fraction));
        assertEquals(density, new ReferenceState(Rig.F70).density(mixture), 2.5e-3 * density);
    }

    @Test
    void viscosityOfAMixtureIsThatOfTheTextbooksExample() {
        // Bird, Stewart and Lightfoot, Transport Phenomena, example on Wilke's formula, from memory:
        // CO2 0.133, O2 0.039, N2 0.828 at 1 atm and 293 K: 1462, 2031, 1754 give 1714 (10⁻⁷ g/(cm·s))
        GasProperties mixture = GasProperties.of(new ShieldingGas(
                "flue gas",
                List.of(
                        new ShieldingGas.Part(species("CO2", 0.04401, 1.3, 146.2e-7), 0.133),
                        new ShieldingGas.Part(species("O2", 0.032, 1.4, 203.1e-7), 0.039),
                        new ShieldingGas.Part(species("N2", 0.02802, 1.4, 175.4e-7), 0.828)),
                "test",
                Status.COMPUTED));
        assertEquals(171.4e-7, mixture.viscosity(), 0.1e-7);
    }

    @Test
    void heatCapacitiesOfAMixtureAddByMoles() {
        // half monatomic (c_p = 5/2 R), half diatomic (7/2 R): 3 R, so γ = 3/2
        GasProperties mixture =
                GasProperties.of(mixture(Rig.ARGON_SPECIES, 0.5, species("N2", 0.02802, 1.4, 17.54e-6), 0.5));
        assertEquals(1.5, mixture.heatCapacityRatio(), 1e-14);
    }

    @Test
    void aGasMixedWithItselfStaysWhatItIs() {
        GasProperties twice = GasProperties.of(mixture(Rig.ARGON_SPECIES, 0.3, Rig.ARGON_SPECIES, 0.7));
        assertEquals(Rig.ARGON.viscosity(), twice.viscosity(), 1e-18);
        assertEquals(Rig.ARGON.gasConstant(), twice.gasConstant(), 1e-10);
    }

    @Test
    void refusesWhatIsNoGas() {
        assertThrows(IllegalArgumentException.class, () -> new GasProperties(0, 1.4, 1e-5));
        assertThrows(IllegalArgumentException.class, () -> new GasProperties(200, 1, 1e-5));
        assertThrows(IllegalArgumentException.class, () -> new GasProperties(200, 1.4, 0));
        assertThrows(IllegalArgumentException.class, () -> new GasProperties(Double.NaN, 1.4, 1e-5));
        assertThrows(IllegalArgumentException.class, () -> new GasProperties(200, Double.POSITIVE_INFINITY, 1e-5));
        assertThrows(IllegalArgumentException.class, () -> new ReferenceState(0));
    }

    private static GasSpecies species(String name, double molarMass, double ratio, double viscosity) {
        return new GasSpecies(name, molarMass, ratio, viscosity, "test", Status.COMPUTED);
    }

    private static ShieldingGas mixture(GasSpecies a, double shareA, GasSpecies b, double shareB) {
        return new ShieldingGas(
                "mixture",
                List.of(new ShieldingGas.Part(a, shareA), new ShieldingGas.Part(b, shareB)),
                "test",
                Status.COMPUTED);
    }
}
