package org.seamtally.gas;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SetUpTest {

    static Stream<Consumer<Rig>> impossible() {
        return Stream.of(
                rig -> rig.flow = 0,
                rig -> rig.flow = Double.NaN,
                rig -> rig.flow = Double.POSITIVE_INFINITY,
                rig -> rig.referenceTemperature = 0,
                rig -> rig.gasTemperature = -1,
                rig -> rig.supplyPressure = Rig.ATMOSPHERE,
                rig -> rig.supplyPressure = Double.NaN,
                rig -> rig.torchBackPressure = 0,
                rig -> rig.bore = 0,
                rig -> rig.length = -2,
                rig -> rig.orifice = OptionalDouble.of(0),
                rig -> rig.nozzle = 0,
                rig -> rig.allowedDrift = 0,
                rig -> rig.allowedDrift = 1,
                rig -> rig.allowedDrift = Double.NaN);
    }

    @ParameterizedTest
    @MethodSource("impossible")
    void refusesWhatCannotBe(Consumer<Rig> change) {
        String message = assertThrows(IllegalArgumentException.class, () -> Rig.with(change))
                .getMessage();
        assertTrue(message.contains("must"), message);
    }

    @Test
    void equalValuesAreOneKey() {
        assertEquals(Rig.withOrifice(), Rig.usual().withOrifice(OptionalDouble.of(0.025 * Rig.INCH)));
        assertEquals(
                Rig.withOrifice().hashCode(),
                Rig.usual().withOrifice(OptionalDouble.of(0.025 * Rig.INCH)).hashCode());
        assertNotEquals(Rig.usual(), Rig.withOrifice());
        assertEquals(Rig.usual(), Rig.withOrifice().withOrifice(OptionalDouble.empty()));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7})
    void storesKnowWhatTheyComputedAndDropTheOldest(int capacity) {
        KnownTransients known = new KnownTransients(capacity);
        for (int i = 0; i <= capacity; i++) {
            known.of(lengthened(i));
        }
        assertEquals(0, known.hits());
        assertEquals(capacity + 1, known.misses());
        assertEquals(capacity, known.size());
        assertEquals(capacity, known.capacity());
        StartTransient last = known.of(lengthened(capacity));
        assertEquals(1, known.hits());
        assertTrue(last == known.of(lengthened(capacity)));
        assertEquals(2, known.hits());
        // the first was dropped
        known.of(lengthened(0));
        assertEquals(capacity + 2, known.misses());
        assertEquals(2, known.hits());
    }

    @Test
    void whatIsAskedForAgainIsKeptLonger() {
        KnownTransients known = new KnownTransients(2);
        known.of(lengthened(0));
        known.of(lengthened(1));
        known.of(lengthened(0));
        known.of(lengthened(2));
        known.of(lengthened(0));
        assertEquals(2, known.hits());
        known.of(lengthened(1));
        assertEquals(4, known.misses());
        assertThrows(IllegalArgumentException.class, () -> new KnownTransients(0));
    }

    private static SetUp lengthened(int metres) {
        return Rig.with(rig -> rig.length = 5 + metres);
    }
}
