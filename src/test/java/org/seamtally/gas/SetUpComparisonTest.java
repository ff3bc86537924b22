package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SetUpComparisonTest {

    private static final Duty DUTY = new Duty(220, 22, 40, 230, new GasTimes(0.5, GasTimes.usualPostFlow(90)));

    /** 0.35 a cubic foot, in cubic metres. */
    private static final Optional<BigDecimal> PRICE = Optional.of(new BigDecimal(0.35 / Rig.CUBIC_FOOT));

    private static final SetUp UNREACHABLE = Rig.with(rig -> {
        rig.bore = 1.2e-3;
        rig.length = 60;
    });

    private static NamedSetUp named(String name, SetUp setUp) {
        return new NamedSetUp(name, setUp, Optional.empty());
    }

    private static NamedSetUp named(String name, SetUp setUp, String price) {
        return new NamedSetUp(name, setUp, Optional.of(new BigDecimal(price)));
    }

    private static SetUpComparison compare(Duty duty, NamedSetUp... setUps) {
        return SetUpComparison.of(duty, List.of(setUps), PRICE, StartTransient::of);
    }

    private final SetUpComparison comparison = compare(
            DUTY,
            named("as today", Rig.usual()),
            named("small bore", Rig.smallBore().withOrifice(OptionalDouble.of(0.025 * Rig.INCH)), "68.00"),
            named("too narrow", UNREACHABLE, "10"),
            named("long", Rig.with(rig -> rig.length = 15), "5"),
            named("tight orifice", Rig.usual().withOrifice(OptionalDouble.of(0.021 * Rig.INCH)), "3"));

    @Test
    void thePartsOfAStartAreThoseOfTheDuty() {
        ComparedSetUp today = comparison.setUps().get(0);
        double flow = Rig.usual().flow();
        assertEquals(22 * flow, today.perStart().arc(), 1e-15);
        assertEquals(0.5 * flow, today.perStart().preFlow(), 1e-15);
        assertEquals(9 * flow, today.perStart().postFlow(), 1e-15);
        // off for 30.5 s: the hose has filled up, and 31.5 s on let it settle
        assertEquals(
                today.filled().netSurge(),
                today.perStart().startSurge(),
                1e-4 * today.perStart().startSurge());
        assertEquals(1, today.perStart().starts());
        assertEquals(today.perStart().total() * 220 * 230, today.volumePerYear(), 1e-9);
        assertEquals("as today", today.name());
        assertEquals(
                0.35 * today.volumePerYear() / Rig.CUBIC_FOOT,
                today.costPerYear().orElseThrow().doubleValue(),
                1e-9);
    }

    @Test
    void theFirstIsTheReference() {
        ComparedSetUp today = comparison.setUps().get(0);
        assertEquals(OptionalDouble.empty(), today.savedPerYear());
        assertEquals(Optional.empty(), today.costSavedPerYear());
        assertEquals(OptionalDouble.empty(), today.paybackStarts());
        assertEquals(OptionalDouble.empty(), today.paybackShifts());
        assertEquals(Verdict.Standing.REFERENCE, today.verdict().standing());
        assertEquals(List.of(Verdict.Key.SETTING_STANDS, Verdict.Key.TURBULENT_START), keys(today));
    }

    @Test
    void aSmallBoreSavesAndPaysBack() {
        ComparedSetUp today = comparison.setUps().get(0);
        ComparedSetUp small = comparison.setUps().get(1);
        double saved = today.volumePerYear() - small.volumePerYear();
        assertEquals(saved, small.savedPerYear().getAsDouble(), 0);
        assertTrue(saved > 0);
        double costSaved = 0.35 * saved / Rig.CUBIC_FOOT;
        assertEquals(costSaved, small.costSavedPerYear().orElseThrow().doubleValue(), 1e-9);
        assertEquals(68 / (costSaved / (220 * 230)), small.paybackStarts().getAsDouble(), 1e-6);
        assertEquals(68 / (costSaved / 230), small.paybackShifts().getAsDouble(), 1e-8);
        assertEquals(Verdict.Standing.SAVES, small.verdict().standing());
        assertEquals(
                List.of(
                        Verdict.Key.SETTING_STANDS,
                        Verdict.Key.GAS_SAVED,
                        Verdict.Key.SURGE_SAVED,
                        Verdict.Key.STORED_SAVED,
                        Verdict.Key.LAMINAR_START,
                        Verdict.Key.PAYS_BACK),
                keys(small));
        // two figures: of all gas, and of what the hose stores
        assertEquals(saved / today.volumePerYear(), number(small, 1, "share"), 1e-12);
        assertEquals(
                1 - small.perStart().startSurge() / today.perStart().startSurge(), number(small, 2, "share"), 1e-12);
        assertEquals(1 - small.steady().storedGas() / today.steady().storedGas(), number(small, 3, "share"), 1e-12);
        assertTrue(number(small, 3, "share") > 3 * number(small, 1, "share"));
        assertEquals(small, comparison.best().orElseThrow());
    }

    @Test
    void aSetUpThatCannotReachItsFlowFailsNoOther() {
        ComparedSetUp narrow = comparison.setUps().get(2);
        assertEquals(Verdict.Standing.NOT_REACHABLE, narrow.verdict().standing());
        assertEquals(List.of(Verdict.Key.FLOW_NOT_REACHED), keys(narrow));
        assertEquals(narrow.steady().greatestFlow() / UNREACHABLE.flow(), number(narrow, 0, "share"), 1e-12);
        assertEquals(OptionalDouble.empty(), narrow.savedPerYear());
        assertEquals(OptionalDouble.empty(), narrow.paybackStarts());
        assertEquals(0, narrow.perStart().startSurge(), 0);
        assertEquals(5, comparison.setUps().size());
    }

    @Test
    void aLongerHoseSavesNothingAndIsNeverPaidBack() {
        ComparedSetUp longer = comparison.setUps().get(3);
        assertEquals(Verdict.Standing.SAVES_NOTHING, longer.verdict().standing());
        assertTrue(longer.savedPerYear().getAsDouble() < 0);
        assertEquals(OptionalDouble.empty(), longer.paybackStarts());
        assertEquals(
                List.of(Verdict.Key.SETTING_STANDS, Verdict.Key.GAS_ADDED, Verdict.Key.TURBULENT_START), keys(longer));
        assertTrue(number(longer, 1, "share") > 0);
    }

    @Test
    void aTightOrificeSavesButItsSettingDoesNotStand() {
        ComparedSetUp tight = comparison.setUps().get(4);
        assertEquals(Verdict.Standing.DOES_NOT_STAND, tight.verdict().standing());
        assertEquals(Verdict.Key.SETTING_DRIFTS, keys(tight).get(0));
        assertEquals(tight.steady().drift(), number(tight, 0, "drift"), 0);
        assertEquals(0.05, number(tight, 0, "allowed"), 0);
        assertTrue(tight.savedPerYear().getAsDouble() > 0);
        assertTrue(tight.paybackStarts().isPresent());
    }

    @Test
    void againstAFirstThatDoesNotReachItsFlowNothingIsSaved() {
        SetUpComparison comparison = compare(DUTY, named("narrow", UNREACHABLE), named("usual", Rig.usual(), "1"));
        ComparedSetUp usual = comparison.setUps().get(1);
        assertEquals(
                Verdict.Standing.NOT_REACHABLE,
                comparison.setUps().get(0).verdict().standing());
        assertEquals(Verdict.Standing.REACHES, usual.verdict().standing());
        assertEquals(OptionalDouble.empty(), usual.savedPerYear());
        assertEquals(usual, comparison.best().orElseThrow());
        assertEquals(
                Optional.empty(),
                compare(DUTY, named("a", UNREACHABLE), named("b", UNREACHABLE)).best());
    }

    @Test
    void whereTheGasNeverShutsItFlowsThroughAndNothingSurges() {
        Duty quick = new Duty(400, 5, 6, 200, new GasTimes(1, 9));
        assertFalse(quick.gasShuts());
        assertEquals(-4, quick.gasOffTime(), 1e-12);
        ComparedSetUp usual = compare(quick, named("a", Rig.usual()), named("b", Rig.smallBore()))
                .setUps()
                .get(0);
        // arc 5 s and then 6 s without: 11 s of flow, of the 6 a tenth pre-flow
        assertEquals(11 * Rig.usual().flow(), usual.perStart().total(), 1e-15);
        assertEquals(0.6 * Rig.usual().flow(), usual.perStart().preFlow(), 1e-15);
        assertEquals(0, usual.perStart().startSurge(), 0);
        assertEquals(Verdict.Key.GAS_NEVER_SHUTS, keys(usual).get(2));
        // just filled is not shut either; a moment more is
        assertFalse(new Duty(1, 5, 10, 1, new GasTimes(1, 9)).gasShuts());
        assertTrue(new Duty(1, 5, 10.1, 1, new GasTimes(1, 9)).gasShuts());
        Duty without = new Duty(1, 5, 0, 1, new GasTimes(0, 0));
        assertEquals(
                5 * Rig.usual().flow(),
                without.perStart(StartTransient.of(Rig.usual()).afterOff(0)).total(),
                1e-15);
    }

    @Test
    void aShortTimeOffRefillsInPart() {
        Duty quick = new Duty(400, 5, 11, 200, new GasTimes(0.5, 9));
        ComparedSetUp usual = compare(quick, named("a", Rig.usual()), named("b", Rig.smallBore()))
                .setUps()
                .get(0);
        assertEquals(1.5, quick.gasOffTime(), 1e-12);
        assertEquals(14.5, quick.gasOnTime(), 1e-12);
        assertTrue(usual.perStart().startSurge() < 0.5 * usual.filled().netSurge());
        assertEquals(
                usual.filled().repeated(14.5, 1.5).netSurge(14.5),
                usual.perStart().startSurge(),
                1e-15);
        assertTrue(usual.repeated().peakFlow() < usual.filled().peakFlow());
    }

    @Test
    void withoutPricesThereIsNoMoney() {
        SetUpComparison comparison = SetUpComparison.of(
                DUTY,
                List.of(named("a", Rig.usual()), named("b", Rig.smallBore(), "9")),
                Optional.empty(),
                StartTransient::of);
        ComparedSetUp small = comparison.setUps().get(1);
        assertEquals(Optional.empty(), small.costPerYear());
        assertEquals(Optional.empty(), small.costSavedPerYear());
        assertEquals(OptionalDouble.empty(), small.paybackStarts());
        assertTrue(small.savedPerYear().getAsDouble() > 0);
        assertEquals(
                OptionalDouble.empty(),
                compare(DUTY, named("a", Rig.usual()), named("b", Rig.smallBore()))
                        .setUps()
                        .get(1)
                        .paybackStarts());
    }

    @Test
    void asksForEachStartOnce() {
        List<SetUp> asked = new ArrayList<>();
        SetUpComparison.of(
                DUTY, List.of(named("a", Rig.usual()), named("b", Rig.withOrifice())), Optional.empty(), setUp -> {
                    asked.add(setUp);
                    return StartTransient.of(setUp);
                });
        assertEquals(List.of(Rig.usual(), Rig.withOrifice()), asked);
    }

    @Test
    void theVerdictReadsInPlainWords() {
        Verdict verdict = new Verdict(
                Verdict.Standing.SAVES,
                List.of(
                        new Verdict.Reason(
                                Verdict.Key.SETTING_STANDS, java.util.Map.of("drift", -0.017, "allowed", 0.05)),
                        new Verdict.Reason(Verdict.Key.GAS_SAVED, java.util.Map.of("share", 0.123)),
                        new Verdict.Reason(Verdict.Key.PAYS_BACK, java.util.Map.of("starts", 1234.4, "shifts", 5.61))));
        assertEquals(
                "saves gas: left alone, the flow drifts by -1.7 %, within the 5.0 % allowed; takes 12.3 % less of all"
                        + " gas; is paid back after about 1200 starts, in about 5.6 shifts",
                verdict.words());
        for (ComparedSetUp setUp : comparison.setUps()) {
            assertTrue(setUp.verdict()
                    .words()
                    .startsWith(setUp.verdict().standing().words() + ": "));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 51})
    void refusesTooFewAndTooMany(int count) {
        List<NamedSetUp> setUps = Collections.nCopies(count, named("same", Rig.usual()));
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> SetUpComparison.of(DUTY, setUps, PRICE, StartTransient::of))
                .getMessage();
        assertTrue(message.contains("2 to 50"), message);
    }

    @Test
    void fiftyAreTaken() {
        StartTransient start = StartTransient.of(Rig.with(rig -> rig.meterAt = MeterPlace.MACHINE));
        List<NamedSetUp> fifty = java.util.stream.IntStream.range(0, 50)
                .mapToObj(i -> named("n" + i, Rig.usual()))
                .toList();
        assertEquals(
                50,
                SetUpComparison.of(DUTY, fifty, PRICE, setUp -> start).setUps().size());
    }

    @Test
    void refusesWhatCannotBe() {
        assertThrows(
                IllegalArgumentException.class,
                () -> compare(DUTY, named("twin", Rig.usual()), named("twin", Rig.smallBore())));
        assertThrows(IllegalArgumentException.class, () -> named(" ", Rig.usual()));
        assertThrows(IllegalArgumentException.class, () -> named("cheap", Rig.usual(), "-0.01"));
        assertEquals(BigDecimal.ZERO, named("free", Rig.usual(), "0").price().orElseThrow());
        assertThrows(
                IllegalArgumentException.class,
                () -> SetUpComparison.of(
                        DUTY,
                        List.of(named("a", Rig.usual()), named("b", Rig.usual())),
                        Optional.of(new BigDecimal("-1")),
                        StartTransient::of));
        GasTimes times = new GasTimes(0.5, 9);
        assertThrows(IllegalArgumentException.class, () -> new Duty(0, 1, 1, 1, times));
        assertThrows(IllegalArgumentException.class, () -> new Duty(1, 0, 1, 1, times));
        assertThrows(IllegalArgumentException.class, () -> new Duty(1, 1, -1, 1, times));
        assertThrows(IllegalArgumentException.class, () -> new Duty(1, 1, 1, Double.NaN, times));
    }

    private static List<Verdict.Key> keys(ComparedSetUp setUp) {
        return setUp.verdict().reasons().stream().map(Verdict.Reason::key).toList();
    }

    private static double number(ComparedSetUp setUp, int reason, String name) {
        return setUp.verdict().reasons().get(reason).numbers().get(name);
    }

    @Test
    void postFlowAndPreFlowOfOneLengthShareTheTimeBetweenTwoArcs() {
        Duty quick = new Duty(1, 5, 6, 1, new GasTimes(5, 5));
        GasUse use = quick.perStart(StartTransient.of(Rig.usual()).afterOff(0));
        assertEquals(5 * Rig.usual().flow(), use.arc(), 1e-15);
        assertEquals(3 * Rig.usual().flow(), use.preFlow(), 1e-15);
        assertEquals(3 * Rig.usual().flow(), use.postFlow(), 1e-15);
    }

    @Test
    void aTwinOfTheFirstSavesNothing() {
        ComparedSetUp twin = compare(DUTY, named("a", Rig.usual()), named("b", Rig.usual(), "1"))
                .setUps()
                .get(1);
        assertEquals(0, twin.savedPerYear().getAsDouble(), 0);
        assertEquals(Verdict.Standing.SAVES_NOTHING, twin.verdict().standing());
        assertEquals(OptionalDouble.empty(), twin.paybackStarts());
        // 0 % less, and no word of a surge or a hose that would be smaller
        assertEquals(
                List.of(Verdict.Key.SETTING_STANDS, Verdict.Key.GAS_SAVED, Verdict.Key.TURBULENT_START), keys(twin));
        assertEquals(0, number(twin, 1, "share"), 0);
    }

    @Test
    void gasThatCostsNothingPaysNothingBack() {
        SetUpComparison free = SetUpComparison.of(
                DUTY,
                List.of(named("a", Rig.usual()), named("b", Rig.smallBore(), "9")),
                Optional.of(BigDecimal.ZERO),
                StartTransient::of);
        ComparedSetUp small = free.setUps().get(1);
        assertEquals(0, small.costPerYear().orElseThrow().signum());
        assertEquals(0, small.costSavedPerYear().orElseThrow().signum());
        assertEquals(OptionalDouble.empty(), small.paybackStarts());
        assertEquals(Verdict.Standing.SAVES, small.verdict().standing());
    }

    @Test
    void aPeakOfJust2300IsNoTurbulentStart() {
        SetUp just = Rig.withNozzleWhere(2300, setUp -> StartTransient.of(setUp).peakNozzleReynolds());
        ComparedSetUp start = compare(DUTY, named("a", just), named("b", Rig.usual()))
                .setUps()
                .get(0);
        assertEquals(2300, start.filled().peakNozzleReynolds(), 0);
        assertEquals(List.of(Verdict.Key.SETTING_STANDS, Verdict.Key.LAMINAR_START), keys(start));
    }
}
