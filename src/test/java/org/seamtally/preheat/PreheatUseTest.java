package org.seamtally.preheat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.catalogue.Fuel;
import org.seamtally.catalogue.Fuels;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;
import org.seamtally.seam.Member;
import org.seamtally.seam.TubeToTube;

/** Energy, fuel and time of a joint's preheat. */
class PreheatUseTest {

    private static final double INCH = 25.4e-3;

    /** 68 °F and 300 °F. */
    private static final double AMBIENT = 293.15;

    private static final double HOT = (300 - 32) / 1.8 + 273.15;

    /** Two tubes of 1.5 in × 0.095 in at 45°. */
    private static final List<Member> TUBES = new TubeToTube(
                    1.5 * INCH,
                    0.095 * INCH,
                    1.5 * INCH,
                    0.095 * INCH,
                    Math.PI / 4,
                    0,
                    DepositSection.ofLeg(0.125 * INCH, 0, Face.FLAT))
            .members();

    private static PreheatPlan plan(HeatSource source, double hold, OptionalDouble power) {
        return new PreheatPlan(HOT, AMBIENT, 3 * INCH, hold, source, 0.25, power);
    }

    /**
     * 36 959 J in the steel and 140.875 W lost at 300 °F; over a hold of 2 min that is (36 959 + 140.875 · 120)/0.25 =
     * 215 456 J: found by another program from the same model.
     */
    @Test
    void twoTubesAtThreeHundredFahrenheit() {
        PreheatUse use = PreheatUse.of(TUBES, plan(HeatSource.electricity(), 120, OptionalDouble.empty()));
        assertEquals(36_959, use.content(), 0.51);
        assertEquals(140.875, use.losses(), 5.1e-4);
        assertEquals(215_456, use.energy(), 0.51);
        assertEquals(120, use.time());
        assertTrue(use.fuelMass().isEmpty());
    }

    /** The same content by hand: π (1.5 − .095) .095 in² over 3 in and 6 in + 1.5 in/sin 45°, 7850 kg/m³. */
    @Test
    void theContentIsTheZonesSteelTimesItsHeat() {
        double area = Math.PI * 1.405 * 0.095;
        double volume = area * (3 + 6 + 1.5 * Math.sqrt(2)) * Math.pow(INCH, 3);
        double expected = 7850 * volume * SteelHeat.content(AMBIENT, HOT);
        PreheatUse use = PreheatUse.of(TUBES, plan(HeatSource.electricity(), 0, OptionalDouble.empty()));
        assertEquals(expected, use.content(), 1e-9 * expected);
        assertEquals(use.content() / 0.25, use.energy(), 1e-9);
    }

    /** t = content/(η P − losses/2), supplied = P t + losses · hold/η: 36 959/(500 − 70.4375) s for 2 kW at a quarter. */
    @Test
    void aSourceOfKnownPowerHeatsUpAgainstHalfTheLosses() {
        PreheatUse use = PreheatUse.of(TUBES, plan(HeatSource.electricity(), 120, OptionalDouble.of(2000)));
        double heatUp = 36_959 / (500 - 140.875 / 2);
        assertEquals(heatUp + 120, use.time(), 1e-2);
        assertEquals(2000 * heatUp + 140.875 * 120 / 0.25, use.energy(), 5);
        assertEquals(36_959, use.content(), 0.51);
        assertEquals(140.875, use.losses(), 5.1e-4);
    }

    /** η P = losses/2 never gets there; a hair more does, in a very long time. */
    @Test
    void aSourceThatTheLossesEatUpIsRefused() {
        double least = PreheatUse.of(TUBES, plan(HeatSource.electricity(), 0, OptionalDouble.empty()))
                        .losses()
                / 2
                / 0.25;
        assertEquals(140.875 / 2 / 0.25, least, 1e-3);
        for (double power : new double[] {least, 0.5 * least}) {
            PreheatUse.TooWeakException refused = assertThrows(
                    PreheatUse.TooWeakException.class,
                    () -> PreheatUse.of(TUBES, plan(HeatSource.electricity(), 0, OptionalDouble.of(power))));
            assertEquals(least, refused.leastPower(), 1e-12);
            assertTrue(refused.getMessage().contains(Double.toString(power)), refused.getMessage());
        }
        double slow = PreheatUse.of(TUBES, plan(HeatSource.electricity(), 0, OptionalDouble.of(least * 1.001)))
                .time();
        assertEquals(36_959 / (0.25 * least * 0.001), slow, 1e-5 * slow);
    }

    /**
     * Lower heating values from formation enthalpies (Active Thermochemical Tables 1.112), MJ/kg.
     */
    @ParameterizedTest(name = "{0}: {1} MJ/kg")
    @CsvSource({
        "propane, 46.337",
        "methane, 50.027",
        "acetylene, 48.279",
        "propylene, 45.775",
        "hydrogen, 119.951",
        "butane, 45.715"
    })
    void fuelIsTheEnergyOverItsLowerHeatingValue(String name, double megajoules) {
        Fuel fuel = Fuels.find(name).orElseThrow();
        PreheatUse use = PreheatUse.of(TUBES, plan(HeatSource.of(fuel), 120, OptionalDouble.empty()));
        assertEquals(215_456 / (megajoules * 1e6), use.fuelMass().orElseThrow(), 1e-8);
    }

    @Test
    void aSourceGoesByItsFuelsNameOrIsElectric() {
        assertEquals("electricity", HeatSource.electricity().name());
        assertEquals(Optional.empty(), HeatSource.electricity().fuel());
        Fuel propane = Fuels.find("propane").orElseThrow();
        assertEquals("propane", HeatSource.of(propane).name());
        assertEquals(Optional.of(propane), HeatSource.of(propane).fuel());
    }

    /** A steel that is warm enough takes nothing. */
    @Test
    void noRiseTakesNoHeat() {
        PreheatPlan plan =
                new PreheatPlan(AMBIENT, AMBIENT, 75e-3, 60, HeatSource.electricity(), 0.5, OptionalDouble.empty());
        PreheatUse use = PreheatUse.of(TUBES, plan);
        assertEquals(0, use.content());
        assertEquals(0, use.losses());
        assertEquals(0, use.energy());
    }

    @ParameterizedTest
    @CsvSource({
        "293.14, 293.15, 0.07, 0, 0.5, 100",
        "873.16, 293.15, 0.07, 0, 0.5, 100",
        "NaN, 293.15, 0.07, 0, 0.5, 100",
        "400, 0, 0.07, 0, 0.5, 100",
        "400, NaN, 0.07, 0, 0.5, 100",
        "400, 293.15, 0, 0, 0.5, 100",
        "400, 293.15, NaN, 0, 0.5, 100",
        "400, 293.15, 0.07, -1e-9, 0.5, 100",
        "400, 293.15, 0.07, NaN, 0.5, 100",
        "400, 293.15, 0.07, 0, 0, 100",
        "400, 293.15, 0.07, 0, 1.0000001, 100",
        "400, 293.15, 0.07, 0, NaN, 100",
        "400, 293.15, 0.07, 0, 0.5, 0",
        "400, 293.15, 0.07, 0, 0.5, NaN"
    })
    void plansThatCannotBeAreRefused(
            double temperature, double ambient, double zone, double hold, double efficiency, double power) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new PreheatPlan(
                        temperature,
                        ambient,
                        zone,
                        hold,
                        HeatSource.electricity(),
                        efficiency,
                        OptionalDouble.of(power)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {293.15, 873.15})
    void theEdgesOfTheRangesAreTaken(double temperature) {
        PreheatPlan plan =
                new PreheatPlan(temperature, 293.15, 1e-3, 0, HeatSource.electricity(), 1, OptionalDouble.of(1e4));
        assertEquals(plan.temperature() == AMBIENT, PreheatUse.of(TUBES, plan).content() == 0);
        assertEquals(temperature, plan.temperature());
    }
}
