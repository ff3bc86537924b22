package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected figures were computed apart, by a general stiff solver on a fine grid of the same model. */
class StartTransientTest {

    private final StartTransient usual = StartTransient.of(Rig.usual());
    private final StartTransient orifice = StartTransient.of(Rig.withOrifice());

    @Test
    void theUsualStartThrowsAway0739Litres() {
        assertEquals(0.739, usual.netSurge() / Rig.LITRE, 0.005 * 0.739);
        assertEquals(74.4, usual.peakFlow() / Rig.CUBIC_FOOT_PER_HOUR, 0.05);
        assertEquals(4353, usual.peakNozzleReynolds(), 1);
        assertEquals(5.5, usual.timeWithin5Percent(), 0.03 * 5.5);
        assertTrue(usual.netSurge() < usual.steady().storedGas());
        assertTrue(usual.netSurge() > 0);
        assertFalse(usual.lumped());
        assertEquals(20, usual.cells());
    }

    @Test
    void theSmallBoreThrowsAway0141Litres() {
        StartTransient start = StartTransient.of(Rig.smallBore());
        assertEquals(0.141, start.netSurge() / Rig.LITRE, 0.005 * 0.141);
        assertEquals(1.2, start.timeWithin5Percent(), 0.03 * 1.2);
    }

    @Test
    void theOrificeDampsThePeak() {
        assertEquals(25.5, orifice.peakFlow() / Rig.CUBIC_FOOT_PER_HOUR, 0.05);
        assertEquals(0.281, orifice.netSurge() / Rig.LITRE, 0.005 * 0.281);
        assertEquals(0, orifice.turbulentTime().getAsDouble(), 0);
        assertEquals(0, orifice.turbulentVolume().getAsDouble(), 0);
    }

    @Test
    void aShortStartThrowsAwayLess() {
        assertEquals(0, orifice.netSurge(0), 0);
        // a tack of 2 s with 0.5 s before and 9 s after, against a segment of a quarter minute
        double tack = orifice.netSurge(11.5);
        double segment = orifice.netSurge(9.5 + 88.1367 / 4);
        assertEquals(0.2654, tack / Rig.LITRE, 0.0003);
        assertTrue(tack < segment && segment < orifice.netSurge());
        assertEquals(orifice.netSurge(), orifice.netSurge(1e6), 0);
        double before = 0;
        for (double time = 0.01; time < 40; time *= 1.1) {
            double now = orifice.netSurge(time);
            assertTrue(now >= before, "at " + time);
            before = now;
        }
        assertThrows(IllegalArgumentException.class, () -> orifice.netSurge(-1));
        assertThrows(IllegalArgumentException.class, () -> orifice.netSurge(Double.NaN));
    }

    @Test
    void theSurgeIsTheAreaUnderTheCurveAboveTheSetting() {
        List<StartTransient.CurvePoint> curve = usual.curve();
        assertEquals(101, curve.size());
        assertEquals(0, curve.get(0).time(), 0);
        assertEquals(usual.peakFlow(), curve.get(0).flow(), 1e-12 * usual.peakFlow());
        assertEquals(usual.timeWithin1Percent(), curve.get(100).time(), 0);
        assertEquals(1.01 * Rig.usual().flow(), curve.get(100).flow(), 1e-9);
        double area = 0;
        double length = 0;
        double longest = 0;
        for (int i = 1; i < curve.size(); i++) {
            StartTransient.CurvePoint a = curve.get(i - 1);
            StartTransient.CurvePoint b = curve.get(i);
            assertTrue(b.time() > a.time() && b.flow() <= a.flow());
            area += (b.time() - a.time())
                    * ((a.flow() + b.flow()) / 2 - Rig.usual().flow());
            double step = Math.hypot(
                    (b.time() - a.time()) / usual.timeWithin1Percent(),
                    (b.flow() - a.flow())
                            / (usual.peakFlow() - 1.01 * Rig.usual().flow()));
            length += step;
            longest = Math.max(longest, step);
        }
        assertEquals(usual.netSurge(usual.timeWithin1Percent()), area, 1e-3 * area);
        // well chosen: no piece of the drawn line is longer than the others
        assertTrue(longest < 1.03 * length / 100, longest + " of " + length);
    }

    @Test
    void timesAreThoseAtWhichTheCurveCrosses() {
        assertTrue(usual.timeWithin1Percent() > usual.timeWithin5Percent());
        double rate = rateAt(usual, usual.timeWithin5Percent());
        assertEquals(0.05 * Rig.usual().flow(), rate, 1e-3 * Rig.usual().flow());
        double turbulent = usual.turbulentTime().getAsDouble();
        double nozzle = (Rig.usual().flow() + rateAt(usual, turbulent))
                / Rig.usual().flow()
                * usual.steady().nozzleReynolds();
        assertEquals(2300, nozzle, 2);
        assertEquals(
                usual.netSurge(turbulent) + turbulent * Rig.usual().flow(),
                usual.turbulentVolume().getAsDouble(),
                1e-15);
        assertEquals(1.533, turbulent, 0.03 * 1.533);
    }

    /** The excess flow as the slope of what has been thrown away. */
    private static double rateAt(StartTransient start, double time) {
        return (start.netSurge(time + 1e-3) - start.netSurge(time - 1e-3)) / 2e-3;
    }

    @Test
    void aSettingThatIsTurbulentItselfNeverEnds() {
        StartTransient start = StartTransient.of(Rig.with(rig -> rig.nozzle = 0.15 * Rig.INCH));
        assertTrue(start.steady().nozzleReynolds() > 2300);
        assertEquals(OptionalDouble.empty(), start.turbulentTime());
        assertEquals(OptionalDouble.empty(), start.turbulentVolume());
    }

    @Test
    void withTheMeterAtTheMachineAStartThrowsNothingAway() {
        nothing(StartTransient.of(Rig.with(rig -> rig.meterAt = MeterPlace.MACHINE)));
    }

    @Test
    void aSettingThatIsNotReachedHasNoSurge() {
        StartTransient start = StartTransient.of(Rig.with(rig -> {
            rig.flow = 80 * Rig.CUBIC_FOOT_PER_HOUR;
            rig.bore = 0.08 * Rig.INCH;
        }));
        assertFalse(start.steady().reachable());
        nothing(start);
        nothing(start.afterOff(10));
    }

    private static void nothing(StartTransient start) {
        assertEquals(0, start.netSurge(), 0);
        assertFalse(start.lumped());
        assertEquals(0, start.netSurge(), 0);
        assertEquals(0, start.netSurge(5), 0);
        assertEquals(start.steady().flow(), start.peakFlow(), 0);
        assertEquals(0, start.timeWithin5Percent(), 0);
        assertEquals(0, start.timeWithin1Percent(), 0);
        assertEquals(0, start.cells());
        assertEquals(0, start.cellBalances());
        assertEquals(0, start.massDefect(), 0);
        assertEquals(List.of(new StartTransient.CurvePoint(0, start.steady().flow())), start.curve());
    }

    // ---- refilled in part

    @Test
    void theUsualHoseRefillsTo95PercentIn7AndAHalfSeconds() {
        assertEquals(0.95, usual.afterOff(7.5).netSurge() / usual.netSurge(), 0.015);
    }

    @Test
    void aLongerTimeOffNeverThrowsAwayLess() {
        double before = 0;
        double peak = usual.steady().flow();
        for (double off : new double[] {0.1, 0.5, 1, 2, 4, 8, 16, 100}) {
            StartTransient start = usual.afterOff(off);
            assertTrue(
                    start.netSurge() >= before * (1 - 1e-6) && start.peakFlow() > peak * (1 - 1e-9),
                    "after " + off + " s");
            before = start.netSurge();
            peak = start.peakFlow();
            assertTrue(before <= usual.netSurge() * (1 + 1e-4));
        }
        assertEquals(usual.netSurge(), before, 1e-4 * before);
        assertEquals(usual.peakFlow(), peak, 1e-4 * peak);
    }

    @Test
    void whatTheMeterPutsInWhileShutComesOutAgain() {
        // at first the meter is choked and puts in its setting: after 1 s of it, 1 s of the set flow is stored, and out
        // it comes, for the meter stays choked
        double in = Rig.usual().flow();
        assertEquals(in, usual.afterOff(1).netSurge(), 2e-3 * in);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -3, Double.NEGATIVE_INFINITY})
    void gasThatNeverShutThrowsNothingAway(double off) {
        assertEquals(0, usual.afterOff(off).netSurge(), 0);
        assertEquals(Rig.usual().flow(), usual.afterOff(off).peakFlow(), 1e-18);
    }

    @Test
    void aStartThatRepeatsItselfComesBackToItself() {
        // on for 3 s only: the hose has not settled when the valve shuts, and is fuller when it opens again
        StartTransient repeated = orifice.repeated(3, 4);
        assertTrue(repeated.netSurge(3) < orifice.netSurge(3));
        assertTrue(repeated.peakFlow() > orifice.afterOff(4).peakFlow());
        // over one round what goes out is what the meter lets in, and that is at most the choked flow
        double in = 3 * Rig.withOrifice().flow() + repeated.netSurge(3);
        assertTrue(in <= 7 * Rig.withOrifice().flow() / (1 + orifice.steady().drift()) * 1.0001);
        // and long times are those of a full hose
        assertEquals(orifice.netSurge(), orifice.repeated(1e3, 1e3).netSurge(), 1e-4 * orifice.netSurge());
        assertThrows(IllegalArgumentException.class, () -> orifice.repeated(0, 1));
        assertThrows(IllegalArgumentException.class, () -> orifice.repeated(1, Double.NaN));
    }

    @Test
    void aRepeatedStartCountsItsOwnBalances() {
        StartTransient repeated = usual.repeated(10, 5);
        assertTrue(repeated.cellBalances() > usual.cellBalances());
        assertEquals(repeated.cellBalances(), usual.repeated(10, 5).cellBalances());
        assertTrue(repeated.massDefect() < 1e-6);
    }

    // ---- properties

    static Stream<Rig.Drawn> setUps() {
        return Rig.sweep(1912, 40);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void massBalances(Rig.Drawn drawn) {
        assertTrue(StartTransient.of(drawn.setUp()).massDefect() < 1e-6);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void twiceTheCellsMoveTheSurgeByLessThanAFifthOfAPercent(Rig.Drawn drawn) {
        SetUp setUp = drawn.setUp();
        double usual = StartTransient.of(setUp, Resolution.CELLS).netSurge();
        double twice = StartTransient.of(
                        setUp, new Resolution(2 * Resolution.CELLS.cells(), Resolution.CELLS.tolerance()))
                .netSurge();
        assertEquals(twice, usual, 0.002 * twice);
    }

    @Test
    void theUsualSetUpTakesFewBalancesForThatAccuracy() {
        StartTransient fine = StartTransient.of(Rig.usual(), new Resolution(160, 1e-6));
        assertEquals(fine.netSurge(), usual.netSurge(), 2e-5 * fine.netSurge());
        assertTrue(usual.cellBalances() <= 20_000, usual.cellBalances() + " balances");
        // the counter counts: three states of 20 cells a step, and the fine grid takes more of both
        assertEquals(0, usual.cellBalances() % 20);
        assertTrue(usual.cellBalances() > 20 * 3 * 20);
        assertTrue(fine.cellBalances() > 8 * usual.cellBalances());
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void anOrificeNeverRaisesThePeakAndASmallerOneNeverLessThanAWider(Rig.Drawn drawn) {
        SetUp open = drawn.setUp().withOrifice(OptionalDouble.empty());
        double peak = StartTransient.of(open).peakFlow();
        for (double diameter : new double[] {4e-3, 2e-3, 1e-3, 0.5e-3}) {
            SetUp with = open.withOrifice(OptionalDouble.of(diameter));
            if (SteadyState.of(with).reachable()) {
                double damped = StartTransient.of(with).peakFlow();
                assertTrue(damped <= peak * (1 + 1e-12), diameter + " m");
                peak = damped;
            }
        }
        assertTrue(peak > 0);
    }

    @ParameterizedTest
    @MethodSource("setUps")
    void theSurgeIsPositiveAndBelowTheStoredGas(Rig.Drawn drawn) {
        StartTransient start = StartTransient.of(drawn.setUp());
        assertTrue(start.netSurge() > 0);
        assertTrue(start.netSurge() <= start.steady().storedGas() * (1 + 1e-6));
        assertTrue(start.peakFlow() > start.steady().flow());
    }

    @Test
    void aHoseWithoutADropOfItsOwnIsOneCellWithinATenthOfAPercent() {
        List<SetUp> wide = Rig.sweep(31, 120)
                .map(Rig.Drawn::setUp)
                .filter(setUp -> StartTransient.of(setUp).lumped())
                .toList();
        assertTrue(wide.size() >= 10, wide.size() + " of 120");
        for (SetUp setUp : wide) {
            double line = StartTransient.of(setUp, Resolution.CELLS).netSurge();
            StartTransient lumped = StartTransient.of(setUp);
            assertEquals(line, lumped.netSurge(), 1e-3 * line, setUp.toString());
            assertEquals(1, lumped.cells());
            SteadyState steady = lumped.steady();
            assertTrue(steady.endPressure() > 0.99 * steady.inletPressure());
        }
    }

    @Test
    void theStraightPieceOfTheNozzleLawDoesNotMatter() {
        // as a share of the surge, all that the patch could change: the meter's flow between 0.999 and 1 of the
        // supply's pressure, at most the set flow, for the instant that the inlet stays there
        ReferenceHose narrower = new ReferenceHose(Rig.withOrifice(), 40);
        assertEquals(narrower.net, orifice.netSurge(), 5e-4 * narrower.net);
    }

    @Test
    void aGeneralExplicitSolverAgreesAndTakesFarMoreBalances() {
        // Hipparchus, Dormand and Prince 8(5,3), on ten cells, for the first twentieth of a second
        double[] explicit = TransientUnderTest.explicitly(10, 0.05);
        double here = StartTransient.of(Rig.usual(), new Resolution(10, 1e-5)).netSurge(0.05);
        assertEquals(explicit[0], here, 1e-3 * here);
        assertTrue(explicit[1] > 10 * TransientUnderTest.balances(), explicit[1] + " balances");
    }

    @Test
    void massThatDoesNotBalanceWouldShow() {
        // the course of one hose, put to another of half the volume
        SetUp half = Rig.with(rig -> rig.length = 12.5 * Rig.FOOT);
        LineOfCells line = LineOfCells.of(Rig.usual(), SteadyState.of(Rig.usual()), Resolution.CELLS);
        LineOfCells other = LineOfCells.of(half, SteadyState.of(half), Resolution.CELLS);
        Course course = line.open(line.full(), Double.POSITIVE_INFINITY);
        assertTrue(line.defect(course) < 1e-12);
        assertEquals(line.defect(course), usual.massDefect(), 0);
        double stored = usual.steady().storedGas() * Rig.usual().referenceDensity();
        assertEquals(stored / 2 / course.outflow(), other.defect(course), 5e-3);
    }

    @Test
    void cellsThatSwingWithinTheToleranceAreFollowedMoreFinely() {
        // a wide short hose at high pressure, while it refills: with one tolerance alone its cells swing without end
        StartTransient start = StartTransient.of(Rig.with(rig -> {
            rig.flow = 1.92923302833e-4;
            rig.gasTemperature = 280.92272508530573;
            rig.supplyPressure = 1778480.607546664;
            rig.torchBackPressure = 1018.7511988402529;
            rig.bore = 0.006652944922688472;
            rig.length = 1.1279321970357026;
        }));
        double off = 1;
        // the meter is choked: it puts in its setting
        assertEquals(
                start.setUp().flow() * off,
                start.afterOff(off).netSurge(),
                0.02 * start.setUp().flow());
        // and as they swing they stay where a tolerance that is fine from the first puts them
        double finer = StartTransient.of(start.setUp(), new Resolution(20, 1e-8))
                .afterOff(off)
                .peakFlow();
        assertEquals(finer, start.afterOff(off).peakFlow(), 1e-6 * finer);
    }

    @Test
    void aLostRunEndsRatherThanHang() {
        assertThrows(UnsteadyException.class, () -> {
            Hose hose = new Hose(0.01, 1);
            HoseLine line = new HoseLine(
                    hose,
                    new double[] {0},
                    new double[] {1},
                    new HoseFriction(0.01, Rig.ARGON, 300),
                    2e5,
                    new Restriction(0, Rig.ARGON, 300),
                    Rig.ARGON.gasConstant() * 300);
            // nothing comes in, so that the flow never comes to what is waited for
            Outlet outlet = p -> new Rate(1e-9 * p, 1e-9);
            Course.follow(
                    line, outlet, new double[] {2e5}, 1, new Course.Scale(2e5, 1, 1, 1e-6), Double.POSITIVE_INFINITY);
        });
    }

    @Test
    void aSettingOfJust2300AtTheNozzleIsTurbulentUntilSteady() {
        SetUp just = Rig.withNozzleWhere(2300, setUp -> SteadyState.of(setUp).nozzleReynolds());
        StartTransient start = StartTransient.of(just);
        assertEquals(2300, start.steady().nozzleReynolds(), 0);
        // it ends, but only with the start itself: 1e-5 is where the flow counts as steady
        double time = start.turbulentTime().getAsDouble();
        assertTrue(time > start.timeWithin1Percent());
        assertEquals(start.netSurge(), start.netSurge(time), 1e-4 * start.netSurge());
    }

    @Test
    void aSurgeOfLessThanOnePercentIsDrawnAsOnePoint() {
        StartTransient start = usual.afterOff(1e-3);
        assertTrue(start.netSurge() > 0);
        assertTrue(start.peakFlow() > start.steady().flow());
        assertEquals(0, start.timeWithin1Percent(), 0);
        assertEquals(List.of(new StartTransient.CurvePoint(0, start.peakFlow())), start.curve());
    }

    @ParameterizedTest
    @CsvSource({
        // s on, s off: the hose would take seconds to settle or to fill
        "0.1, 0.05",
        "0.2, 0.1",
        "0.5, 0.2",
        "3, 1"
    })
    void whileTheMeterStaysChokedARoundThrowsAwayWhatCameInWhileShut(double on, double off) {
        // choked all the round, the meter puts in its setting: over a round that repeats itself as much goes out
        double in = Rig.usual().flow() * off;
        assertEquals(in, usual.repeated(on, off).netSurge(on), 3e-4 * in);
    }

    @Test
    void aHoseWhoseDropMattersAtTheFirstInstantOnlyIsNoSingleCell() {
        SetUp setUp = Rig.with(rig -> {
            rig.supplyPressure = 1e6;
            rig.torchBackPressure = 500;
            rig.bore = 6e-3;
            rig.length = 3;
        });
        SteadyState steady = SteadyState.of(setUp);
        double drop = steady.inletPressure() - steady.endPressure();
        assertTrue(drop < Resolution.LUMPED_DROP * steady.inletPressure());
        assertTrue(drop < Resolution.LUMPED_SHARE * (setUp.supplyPressure() - steady.meanPressure()));
        StartTransient start = StartTransient.of(setUp);
        assertFalse(start.lumped());
        // one cell would settle too soon
        double finer = StartTransient.of(setUp, new Resolution(80, 1e-6)).timeWithin5Percent();
        assertEquals(finer, start.timeWithin5Percent(), 2e-3 * finer);
        assertTrue(StartTransient.of(setUp, Resolution.LUMPED).timeWithin5Percent() < 0.98 * finer);
    }

    @ParameterizedTest
    @CsvSource({"0, 0.1", "-1, 0.1", "1, 0", "1, -0.1", "1, 1", "1, 1.5", "1, NaN"})
    void refusesWhatIsNoResolution(int cells, double tolerance) {
        assertEquals(1, new Resolution(1, 0.1).cells());
        assertThrows(IllegalArgumentException.class, () -> new Resolution(cells, tolerance));
    }

    @Test
    void afterItsEndACourseStaysWhereItCame() {
        LineOfCells line = LineOfCells.of(Rig.usual(), SteadyState.of(Rig.usual()), Resolution.CELLS);
        double set = Rig.usual().massFlow();
        Course course = line.open(line.full(), Double.POSITIVE_INFINITY);
        double last = course.flow(course.end());
        assertEquals(set, last, 1e-5 * set);
        assertEquals(last, course.flow(course.end() + 1), 0);
        // it ends a hair above the setting: through the setting itself it never falls
        assertTrue(last > set);
        assertEquals(course.end(), course.lastAbove(set), 0);
    }

    @Test
    void aLevelJustBelowThePeakIsCrossedWithinTheFirstStep() {
        LineOfCells line = LineOfCells.of(Rig.usual(), SteadyState.of(Rig.usual()), Resolution.CELLS);
        Course course = line.open(line.full(), Double.POSITIVE_INFINITY);
        double level = course.peak() * (1 - 1e-9);
        double time = course.lastAbove(level);
        assertTrue(time > 0);
        assertEquals(level, course.flow(time), 1e-13 * level);
        assertEquals(0, course.lastAbove(course.peak()), 0);
    }

    @Test
    void aCourseUntilATimeEndsAtThatTime() {
        LineOfCells line = LineOfCells.of(Rig.usual(), SteadyState.of(Rig.usual()), Resolution.CELLS);
        for (int i = 1; i <= 40; i++) {
            double until = 0.07 * i;
            assertEquals(until, line.open(line.full(), until).end(), 0);
        }
    }

    @Test
    void belowTheAirsPressureNothingIsLeftForAnOrifice() {
        // a state that a solver may try: the torch line has it all, and the flow runs in
        TorchEnd end = TorchEnd.of(Rig.withOrifice());
        assertEquals(Rig.ATMOSPHERE, end.behindOrifice(Rig.ATMOSPHERE), 0);
        assertEquals(0, end.at(Rig.ATMOSPHERE).value(), 0);
        assertEquals(0.9999 * Rig.ATMOSPHERE, end.behindOrifice(0.9999 * Rig.ATMOSPHERE), 0);
        assertTrue(end.at(0.9999 * Rig.ATMOSPHERE).value() < 0);
    }
}
