package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BestOrificeTest {

    private static SteadyState at(SetUp setUp, double diameter) {
        return SteadyState.of(setUp.withOrifice(OptionalDouble.of(diameter)));
    }

    @Test
    void theUsualHoseTakes24ThousandthsOr060Millimetres() {
        BestOrifice.Found best = assertInstanceOf(BestOrifice.Found.class, BestOrifice.of(Rig.usual()));
        assertEquals(-0.05, best.exact().drift(), 1e-9);
        assertEquals(24, best.inch().diameter() / BestOrifice.INCH_STEP, 1e-9);
        assertEquals(0.60e-3, best.metric().diameter(), 1e-12);
        assertEquals(25.5, peakWith(0.025 * Rig.INCH), 0.05);
        assertTrue(best.inch().peakFlow() / Rig.CUBIC_FOOT_PER_HOUR < 25.5);
        // whatever orifice the set-up has, the best for its hose is the same
        assertEquals(best, BestOrifice.of(Rig.withOrifice()));
    }

    private static double peakWith(double diameter) {
        return StartTransient.of(Rig.usual().withOrifice(OptionalDouble.of(diameter)))
                        .peakFlow()
                / Rig.CUBIC_FOOT_PER_HOUR;
    }

    @Test
    void noneDoesWhereTheSettingDriftsAnyway() {
        SetUp longAndNarrow = Rig.with(rig -> {
            rig.bore = 2e-3;
            rig.length = 30;
        });
        SteadyState steady = SteadyState.of(longAndNarrow);
        assertTrue(!steady.stands());
        assertEquals(new BestOrifice.NoneStands(steady.drift()), BestOrifice.of(longAndNarrow));
    }

    @Test
    void noneIsNeededWithTheMeterAtTheMachine() {
        assertEquals(new BestOrifice.NotNeeded(), BestOrifice.of(Rig.with(rig -> rig.meterAt = MeterPlace.MACHINE)));
    }

    @Test
    void whereMuchDriftIsAllowedTheFlowMustStillBeReached() {
        SetUp careless = Rig.with(rig -> rig.allowedDrift = 0.9);
        BestOrifice.Found best = assertInstanceOf(BestOrifice.Found.class, BestOrifice.of(careless));
        assertTrue(at(careless, best.exact().diameter() * (1 + 1e-9)).reachable());
        assertTrue(!at(careless, best.exact().diameter() * (1 - 1e-6)).reachable());
    }

    static Stream<Rig.Drawn> setUps() {
        return Rig.sweep(88, 40);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void theBestJustStandsAndAnySmallerDoesNot(Rig.Drawn drawn) {
        SetUp setUp = drawn.setUp();
        BestOrifice best = BestOrifice.of(setUp);
        if (best instanceof BestOrifice.Found found) {
            double diameter = found.exact().diameter();
            assertTrue(at(setUp, diameter).stands());
            assertTrue(!at(setUp, diameter * (1 - 1e-6)).stands());
            for (BestOrifice.Size up : new BestOrifice.Size[] {found.inch(), found.metric()}) {
                assertTrue(at(setUp, up.diameter()).stands());
                assertTrue(up.diameter() >= diameter);
                assertTrue(up.peakFlow() >= found.exact().peakFlow());
                assertTrue(up.drift() >= found.exact().drift());
            }
            assertTrue(found.inch().diameter() - diameter <= BestOrifice.INCH_STEP);
            assertTrue(found.metric().diameter() - diameter <= BestOrifice.METRIC_STEP);
        } else {
            assertInstanceOf(BestOrifice.NoneStands.class, best);
            assertTrue(!at(setUp, setUp.hose().insideDiameter()).stands());
        }
    }

    @Test
    void anOrificeAsWideAsTheBoreDoesWhereTheDriftIsJustAllowed() {
        SetUp narrow = Rig.with(rig -> {
            rig.bore = 2e-3;
            rig.length = 30;
        });
        double drift = at(narrow, 2e-3).drift();
        assertTrue(drift < -0.05);
        BestOrifice.Found best = assertInstanceOf(BestOrifice.Found.class, BestOrifice.of(allowing(narrow, -drift)));
        assertEquals(2e-3, best.exact().diameter(), 1e-15);
        assertEquals(drift, best.exact().drift(), 1e-12);
        assertInstanceOf(BestOrifice.NoneStands.class, BestOrifice.of(allowing(narrow, Math.nextDown(-drift))));
    }

    private static SetUp allowing(SetUp setUp, double drift) {
        return new SetUp(
                setUp.gas(),
                setUp.flow(),
                setUp.referenceTemperature(),
                setUp.gasTemperature(),
                setUp.supplyPressure(),
                setUp.torchBackPressure(),
                setUp.hose(),
                setUp.orificeDiameter(),
                setUp.meterAt(),
                setUp.nozzleDiameter(),
                drift);
    }
}
