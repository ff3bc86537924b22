package org.seamtally.arc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;
import org.seamtally.seam.PlateFillet;
import org.seamtally.seam.Seam;

/** Arc time and energy of a joint. */
class ArcWorkTest {

    private static final long SEED = 90;

    /**
     * A textbook exercise on arc welding: 20 V, 300 A and 2.5 mm/s are 2400 J/mm.
     */
    @Test
    void arcEnergyOfATextbooksExercise() {
        ArcSettings arc = given(300, 20, 2.5e-3, 0.6);
        ArcWork work = ArcWork.of(straight(0.1), arc, 0.3, 0);
        assertEquals(2400e3, work.arcEnergy().orElseThrow(), 1e-8);
        assertEquals(0.6 * 2400e3, work.heatInput().orElseThrow(), 1e-8);
        assertEquals(40, work.time(), 1e-12);
        assertEquals(2.5e-3, work.travelSpeed().orElseThrow(), 1e-17);
        assertEquals(ArcWork.RuledBy.GIVEN_SPEED, work.ruledBy());
    }

    /** 814.383 mm³ (found by another program) / 0.7 · 10.5 J/mm³ / (0.7 · 0.2 · 990 W), by hand: 88.1367 s. */
    @Test
    void equalTubesTakeAsLongAsTheyMelt() {
        ArcWork work = ArcWork.of(WeldedJoints.EQUAL_TUBES.seam(), WeldedJoints.ARC, 0.3, 4);
        assertEquals(88.1367, work.time(), 5.1e-5);
        assertEquals(8, work.tackTime());
        assertEquals(work.time() + 8, work.arcOn());
        assertEquals(ArcWork.RuledBy.MELTING, work.ruledBy());
        assertEquals(175.9137e-3 / 88.1367, work.travelSpeed().orElseThrow(), 2e-9);
        assertEquals(990 * 88.1367 / 175.9137e-3, work.arcEnergy().orElseThrow(), 1);
        assertEquals(0.7 * work.arcEnergy().orElseThrow(), work.heatInput().orElseThrow(), 1e-9);
        // 990 W over (88.1367 + 8) s, drawn at 0.85
        assertEquals(990 * 96.1367 / 0.85, work.electricity(), 0.1);
    }

    /** π · 1.25 in at 6 in/min: 39.2699 s, by hand; the small leg would melt sooner. */
    @Test
    void aSleevesSmallLegGoesAtTheGreatestSpeed() {
        ArcWork work = ArcWork.of(WeldedJoints.SLEEVE.seam(), WeldedJoints.ARC, 0.3, 3);
        assertEquals(Math.PI * 1.25 * 10, work.time(), 1e-9);
        assertEquals(39.2699, work.time(), 5.1e-5);
        assertEquals(ArcWork.RuledBy.GREATEST_SPEED, work.ruledBy());
        assertEquals(WeldedJoints.HAND_SPEED, work.travelSpeed().orElseThrow(), 1e-15);
        assertEquals(6, work.tackTime());
    }

    /** π/4 · (3/8 in)² · 0.095 in / 0.7 · 10.5 J/mm³ / 138.6 W, by hand. A given speed does not move a plug. */
    @Test
    void aPlugTakesItsMeltingTimeAndHasNoSpeed() {
        double volume = Math.PI / 4 * 9.525 * 9.525 * 2.413;
        double expected = volume / 0.7 * 10.5 / 138.6;
        Seam plug = WeldedJoints.HOLE.seam();
        for (ArcSettings arc : new ArcSettings[] {WeldedJoints.ARC, given(90, 11, 1e-3, 0.7)}) {
            ArcWork work = ArcWork.of(plug, arc, 0.3, 0);
            assertEquals(expected, work.time(), 1e-10);
            assertEquals(ArcWork.RuledBy.MELTING, work.ruledBy());
            assertTrue(work.travelSpeed().isEmpty());
            assertTrue(work.arcEnergy().isEmpty());
            assertTrue(work.heatInput().isEmpty());
            assertEquals(0, work.tackTime());
            assertEquals(990 * expected / 0.85, work.electricity(), 1e-7);
        }
    }

    static Stream<ArcSettings> sweep() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> new ArcSettings(
                        random.nextDouble(20, 250),
                        random.nextDouble(9, 15),
                        random.nextDouble(0.4, 0.9),
                        random.nextDouble(0.1, 0.4),
                        OptionalDouble.empty(),
                        random.nextDouble(1e-3, 5e-3),
                        random.nextDouble(0, 3),
                        random.nextDouble(0.6, 1)))
                .limit(100);
    }

    /** The longer of the melting time and the time at the greatest speed; heat along the seam adds up to the arc's. */
    @ParameterizedTest(name = "seed " + SEED + ": {0}")
    @MethodSource("sweep")
    void withoutAGivenSpeedTheSlowerOfTheTwoRules(ArcSettings arc) {
        Seam seam = WeldedJoints.EQUAL_TUBES.seam();
        ArcWork work = ArcWork.of(seam, arc, 0.25, 2);
        double melting = seam.depositVolume()
                / 0.75
                * 10.5e9
                / (arc.arcEfficiency() * arc.meltingEfficiency() * arc.current() * arc.voltage());
        double fastest = seam.length() / arc.maxTravelSpeed();
        assertEquals(Math.max(melting, fastest), work.time(), 1e-12 * work.time());
        assertEquals(melting < fastest ? ArcWork.RuledBy.GREATEST_SPEED : ArcWork.RuledBy.MELTING, work.ruledBy());
        double energy = arc.current() * arc.voltage() * work.time();
        assertEquals(energy, work.arcEnergy().orElseThrow() * seam.length(), 1e-12 * energy);
        assertEquals(2 * arc.tackTime(), work.tackTime(), 1e-15);
        double drawn = arc.current() * arc.voltage() * (work.time() + work.tackTime()) / arc.powerSourceEfficiency();
        assertEquals(drawn, work.electricity(), 1e-12 * drawn);
    }

    /** The hand is the limit only where it is slower than the melting: a length of as many metres as melting takes s. */
    @Test
    void whereBothAreEquallyLongTheMeltingRules() {
        ArcSettings arc = new ArcSettings(100, 10, 0.7, 0.2, OptionalDouble.empty(), 1, 0, 1);
        double melting = MeltingBalance.meltingTime(1e-9, 0.3, arc);
        ArcWork work = ArcWork.of(new Seam(melting, 1e-9, straight(1).course()), arc, 0.3, 0);
        assertEquals(ArcWork.RuledBy.MELTING, work.ruledBy());
        assertEquals(1, work.travelSpeed().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void figuresThatAreNotPositiveAreRefused(double value) {
        assertRefused(value, 11, 0.7, 0.2, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, value, 0.7, 0.2, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, 11, value, 0.2, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, 11, 0.7, value, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, 11, 0.7, 0.2, OptionalDouble.of(value), 1, 2, 0.85);
        assertRefused(90, 11, 0.7, 0.2, OptionalDouble.empty(), value, 2, 0.85);
        assertRefused(90, 11, 0.7, 0.2, OptionalDouble.empty(), 1, 2, value);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.0000001, 2})
    void sharesAboveOneAreRefused(double share) {
        assertRefused(90, 11, share, 0.2, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, 11, 0.7, share, OptionalDouble.empty(), 1, 2, 0.85);
        assertRefused(90, 11, 0.7, 0.2, OptionalDouble.empty(), 1, 2, share);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, Double.NaN, Double.POSITIVE_INFINITY})
    void aTackTimeThatIsNoTimeIsRefused(double tackTime) {
        assertRefused(90, 11, 0.7, 0.2, OptionalDouble.empty(), 1, tackTime, 0.85);
    }

    @Test
    void sharesOfOneAndNoTackTimeAreTaken() {
        ArcSettings arc = new ArcSettings(90, 11, 1, 1, OptionalDouble.empty(), 1, 0, 1);
        assertEquals(990, arc.power());
        assertEquals(0, arc.tackTime());
    }

    private static void assertRefused(
            double current,
            double voltage,
            double arcEfficiency,
            double meltingEfficiency,
            OptionalDouble speed,
            double greatestSpeed,
            double tackTime,
            double sourceEfficiency) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new ArcSettings(
                        current,
                        voltage,
                        arcEfficiency,
                        meltingEfficiency,
                        speed,
                        greatestSpeed,
                        tackTime,
                        sourceEfficiency));
    }

    private static ArcSettings given(double current, double voltage, double speed, double arcEfficiency) {
        return new ArcSettings(current, voltage, arcEfficiency, 0.2, OptionalDouble.of(speed), 1e-9, 0, 0.85);
    }

    private static Seam straight(double length) {
        return new PlateFillet(6e-3, length, Math.PI / 2, DepositSection.ofLeg(3e-3, 0, Face.FLAT)).seam();
    }
}
