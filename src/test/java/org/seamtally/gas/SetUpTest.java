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
}
