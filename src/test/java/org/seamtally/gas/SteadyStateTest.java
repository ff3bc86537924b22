package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SteadyStateTest {

    private static double gaugePsi(double pressure) {
        return (pressure - Rig.ATMOSPHERE) / Rig.PSI;
    }

    @Test
    void theUsualSetUpStores0771LitresAndItsSettingStands() {
        SteadyState steady = SteadyState.of(Rig.usual());
        assertEquals(0.771, steady.storedGas() / Rig.LITRE, 0.0005);
        assertTrue(steady.reachable() && steady.meterChoked() && steady.stands());
        assertEquals(0, steady.drift(), 0);
        assertEquals(Rig.usual().flow(), steady.flow(), 1e-18);
        assertEquals(3, gaugePsi(steady.valvePressure()), 1e-9);
        assertEquals(steady.valvePressure(), steady.endPressure(), 1e-9);
        assertEquals(steady.valvePressure(), steady.behindOrificePressure(), 1e-9);
        // Re = 4ṁ/(πdµ) with half the bore is twice the nozzle's
        assertEquals(2 * steady.nozzleReynolds(), steady.hoseReynolds(), 1e-9);
        assertEquals(877.6, steady.nozzleReynolds(), 0.2);
    }

    @Test
    void theSmallBoreStores0149LitresAndNeeds63PsiAtItsInlet() {
        SteadyState steady = SteadyState.of(Rig.smallBore());
        assertEquals(0.149, steady.storedGas() / Rig.LITRE, 0.0005);
        assertEquals(6.3, gaugePsi(steady.inletPressure()), 0.05);
        assertTrue(steady.meterChoked());
        // common practice, no source: small-bore hose saves about 80 % of the stored gas
        assertEquals(0.80, 1 - steady.storedGas() / SteadyState.of(Rig.usual()).storedGas(), 0.02);
    }

    @Test
    void theOrificeTakesTheMeterOutOfChokedFlow() {
        SteadyState steady = SteadyState.of(Rig.withOrifice());
        assertEquals(23.4, gaugePsi(steady.inletPressure()), 0.05);
        assertFalse(steady.meterChoked());
        assertEquals(-0.017, steady.drift(), 0.0005);
        assertTrue(steady.stands());
        assertEquals(3, gaugePsi(steady.behindOrificePressure()), 1e-6);
        assertTrue(steady.valvePressure() > steady.behindOrificePressure());
        assertFalse(SteadyState.of(Rig.with(rig -> {
                    rig.orifice = OptionalDouble.of(0.025 * Rig.INCH);
                    rig.allowedDrift = 0.0165;
                }))
                .stands());
    }

    @ParameterizedTest
    @CsvSource({
        // bore in, length m, gauge psi, litres: V·Δp/p_atm, computed with Z ≈ 0.998, which the ideal gas leaves out
        "0.25, 3.81, 25, 0.2053",
        "0.25, 3.81, 50, 0.4105",
        "0.1875, 3.81, 25, 0.1155",
        "0.25, 7.62, 50, 0.8210"
    })
    void storesAboveAmbientWhatVolumeAndPressureSay(double bore, double length, double gauge, double litres) {
        SteadyState steady = SteadyState.of(Rig.with(rig -> {
            rig.bore = bore * Rig.INCH;
            rig.length = length;
            rig.supplyPressure = Rig.ATMOSPHERE + gauge * Rig.PSI;
        }));
        assertEquals(litres, steady.storedAboveAmbient() / Rig.LITRE, 2e-4 * litres + 5e-5);
    }

    @Test
    void aBoreOf0112HoldsAFifthOfAQuarterInch() {
        // volumes go with the square: (0.112/0.25)² = 0.2007
        double share = SteadyState.of(Rig.smallBore()).storedAboveAmbient()
                / SteadyState.of(Rig.usual()).storedAboveAmbient();
        assertEquals(0.200704, share, 1e-9);
    }

    @Test
    void warmGasIsThinnerThanItsReference() {
        SteadyState cold = SteadyState.of(Rig.usual());
        SteadyState warm = SteadyState.of(Rig.with(rig -> rig.gasTemperature = 1.1 * Rig.F70));
        assertEquals(cold.storedAboveAmbient() / 1.1, warm.storedAboveAmbient(), 1e-12);
    }

    @Test
    void squaredPressureFallsInAStraightLineAlongTheHose() {
        SteadyState steady = SteadyState.of(Rig.smallBore());
        assertEquals(11, steady.pressures().size());
        assertEquals(0, steady.pressures().get(0).position(), 0);
        assertEquals(25 * Rig.FOOT, steady.pressures().get(10).position(), 1e-12);
        double first = Math.pow(steady.inletPressure(), 2);
        double last = Math.pow(steady.endPressure(), 2);
        double sum = 0;
        for (int i = 0; i <= 10; i++) {
            assertEquals(
                    first + (last - first) * i / 10,
                    Math.pow(steady.pressures().get(i).pressure(), 2),
                    1e-9 * first);
            sum += steady.pressures().get(i).pressure() * (i % 10 == 0 ? 0.5 : 1) / 10;
        }
        // the mean by the trapezoid rule over the same points
        assertEquals(sum, steady.meanPressure(), 1e-4 * sum);
    }

    @Test
    void aSettingThatCannotBeReachedSaysWhatPasses() {
        SetUp tooMuch = Rig.with(rig -> {
            rig.flow = 80 * Rig.CUBIC_FOOT_PER_HOUR;
            rig.bore = 0.08 * Rig.INCH;
            rig.length = 30;
        });
        SteadyState steady = SteadyState.of(tooMuch);
        assertFalse(steady.reachable());
        assertFalse(steady.stands());
        assertFalse(steady.meterChoked());
        assertTrue(steady.greatestFlow() < tooMuch.flow());
        assertEquals(steady.greatestFlow(), steady.flow(), 0);
        assertEquals(tooMuch.supplyPressure(), steady.inletPressure(), 1e-6 * tooMuch.supplyPressure());
        assertTrue(steady.drift() < 0);
    }

    @Test
    void justWithinTheGreatestFlowIsReachableAndJustAboveIsNot() {
        double greatest = SteadyState.of(Rig.withOrifice()).greatestFlow();
        // the torch line is sized by the setting: what passes is found for each anew
        double low = Rig.withOrifice().flow();
        double high = 4 * greatest;
        for (int i = 0; i < 30; i++) {
            double flow = (low + high) / 2;
            SteadyState steady = SteadyState.of(withFlow(flow));
            assertEquals(steady.reachable(), steady.greatestFlow() > flow);
            if (steady.reachable()) {
                low = flow;
            } else {
                high = flow;
            }
        }
        SteadyState edge = SteadyState.of(withFlow(low));
        assertTrue(edge.reachable());
        assertEquals(edge.flow(), edge.greatestFlow(), 1e-6 * edge.flow());
    }

    private static SetUp withFlow(double flow) {
        return Rig.with(rig -> {
            rig.flow = flow;
            rig.orifice = OptionalDouble.of(0.025 * Rig.INCH);
        });
    }

    @Test
    void withTheMeterAtTheMachineNothingIsStoredBehindIt() {
        SetUp machine = Rig.with(rig -> rig.meterAt = MeterPlace.MACHINE);
        SteadyState steady = SteadyState.of(machine);
        assertEquals(0, steady.storedGas(), 0);
        assertEquals(0, steady.storedAboveAmbient(), 0);
        assertEquals(machine.supplyPressure(), steady.inletPressure(), 1e-6);
        assertTrue(steady.endPressure() < machine.supplyPressure());
        assertEquals(3, gaugePsi(steady.valvePressure()), 1e-9);
        assertTrue(steady.meterChoked());
        // the choked flow falls with the pressure at the end of the hose
        assertEquals(steady.endPressure() / machine.supplyPressure() - 1, steady.drift(), 1e-3 * -steady.drift());
    }

    static Stream<Rig.Drawn> setUps() {
        return Rig.sweep(4711, 60);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void aLongerHoseMorePressureOrAWiderBoreNeverStoresLess(Rig.Drawn drawn) {
        SetUp s = drawn.setUp();
        double stored = SteadyState.of(s).storedAboveAmbient();
        for (double factor : new double[] {1.001, 1.1, 2}) {
            assertTrue(stored < storedWith(s, factor, 1, 1));
            assertTrue(stored < storedWith(s, 1, factor, 1));
            assertTrue(stored < storedWith(s, 1, 1, factor));
            // above the flowing state, too, a higher pressure and a wider bore never store less
            double above = SteadyState.of(s).storedGas();
            assertTrue(above <= SteadyState.of(changed(s, 1, 1, factor)).storedGas());
            assertTrue(above <= SteadyState.of(changed(s, 1, factor, 1)).storedGas());
        }
    }

    private static double storedWith(SetUp s, double length, double bore, double pressure) {
        return SteadyState.of(changed(s, length, bore, pressure)).storedAboveAmbient();
    }

    private static SetUp changed(SetUp s, double length, double bore, double pressure) {
        return new SetUp(
                s.gas(),
                s.flow(),
                s.referenceTemperature(),
                s.gasTemperature(),
                s.supplyPressure() * pressure,
                s.torchBackPressure(),
                new Hose(s.hose().insideDiameter() * bore, s.hose().length() * length),
                s.orificeDiameter(),
                s.meterAt(),
                s.nozzleDiameter(),
                s.allowedDrift());
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void theFlowThatPassesNeedsJustThePressureThereIs(Rig.Drawn drawn) {
        SetUp s = drawn.setUp();
        SteadyState steady = SteadyState.of(s);
        assertTrue(steady.reachable() && steady.greatestFlow() > s.flow());
        assertTrue(steady.inletPressure() < s.supplyPressure());
        assertTrue(steady.inletPressure() >= steady.meanPressure());
        assertTrue(steady.meanPressure() >= steady.endPressure());
        assertEquals(
                steady.inletPressure() <= s.gas().criticalPressureRatio() * s.supplyPressure(), steady.meterChoked());
        assertEquals(steady.meterChoked(), steady.drift() == 0);
        assertTrue(steady.drift() <= 0 && steady.drift() > -1);
        assertEquals(
                s.supplyPressure(),
                new FlowPath(s).openMeterPressureFor(steady.greatestFlow() * s.referenceDensity()),
                1e-9 * s.supplyPressure());
    }

    @Test
    void theSettingStandsWithADriftThatIsJustAllowed() {
        double drift = -SteadyState.of(Rig.withOrifice()).drift();
        assertTrue(drift > 0);
        assertTrue(withOrificeAllowing(drift).stands());
        assertFalse(withOrificeAllowing(Math.nextDown(drift)).stands());
    }

    private static SteadyState withOrificeAllowing(double drift) {
        return SteadyState.of(Rig.with(rig -> {
            rig.orifice = OptionalDouble.of(0.025 * Rig.INCH);
            rig.allowedDrift = drift;
        }));
    }

    @Test
    void aSupplyOfJustThePressureNeededLeavesNoneForTheMeter() {
        double needed =
                new FlowPath(Rig.usual()).openMeterPressureFor(Rig.usual().massFlow());
        SteadyState none = SteadyState.of(Rig.with(rig -> rig.supplyPressure = needed));
        assertFalse(none.reachable());
        assertEquals(
                Rig.usual().flow(), none.greatestFlow(), 1e-12 * Rig.usual().flow());
        assertTrue(SteadyState.of(Rig.with(rig -> rig.supplyPressure = Math.nextUp(needed)))
                .reachable());
    }

    @Test
    void theMeterIsChokedAtTheCriticalRatioItself() {
        double critical = Rig.ARGON.criticalPressureRatio();
        double behind =
                new FlowPath(Rig.usual()).openMeterPressureFor(Rig.usual().massFlow());
        // the least supply whose critical pressure is what stands behind the meter, and the next one below
        double supply = behind / critical * (1 - 1e-15);
        while (critical * supply < behind) {
            supply = Math.nextUp(supply);
        }
        double just = supply;
        assertEquals(behind, critical * just, 0);
        assertTrue(SteadyState.of(Rig.with(rig -> rig.supplyPressure = just)).meterChoked());
        // a hair of pressure less, and it is not; but the flow falls with the square of how far it is off
        SteadyState below = SteadyState.of(Rig.with(rig -> rig.supplyPressure = Math.nextDown(just)));
        assertFalse(below.meterChoked());
        assertEquals(0, below.drift(), 1e-12);
        for (double off = 1e-15; off < 1e-3; off *= 1.5) {
            double less = just * (1 - off);
            SteadyState near = SteadyState.of(Rig.with(rig -> rig.supplyPressure = less));
            assertFalse(near.meterChoked(), "off by " + off);
            assertEquals(0, near.drift(), 2 * off * off + 1e-12, "off by " + off);
        }
    }
}
