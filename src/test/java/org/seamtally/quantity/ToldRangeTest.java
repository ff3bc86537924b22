package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By hand: an inch is 25.4 mm, a foot 12 in, a cubic foot 28.3168 L, a bar 14.5038 psi, °F = 1.8 °C + 32. */
class ToldRangeTest {

    @ParameterizedTest
    @CsvSource({
        // 0.00787 in, 1.9685 in
        "LENGTH, 0.2 mm, 50 mm, 0.2 to 50 mm, 0.0079 to 1.95 in",
        // 0.1181 in, 39.37 in
        "LENGTH, 3 mm, 1 m, 3 mm to 1 m, 0.12 to 39 in",
        // 3.937 in, 656.2 ft
        "LENGTH, 100 mm, 200 m, 100 mm to 200 m, 4 in to 650 ft",
        "LENGTH, -1 m, 1 m, -1 to 1 m, -39 to 39 in",
        "LENGTH, 0 mm, 500 mm, 0 to 500 mm, 0 to 19.5 in",
        // 2.119 and 127.13 ft3/h
        "FLOW, 1 L/min, 60 L/min, 1 to 60 L/min, 2.2 to 125 ft³/h",
        // 2.9008 and 290.08 psi
        "GAUGE_PRESSURE, 0.2 bar, 20 bar, 0.2 to 20 bar, 3 to 290 psi",
        "TEMPERATURE, -40 degC, 450 degC, -40 to 450 °C, -40 to 842 °F",
        "SPEED, 0.1 mm/s, 50 mm/s, 0.1 to 50 mm/s, 0.24 to 115 in/min",
        // what both systems measure alike stays as it is
        "TIME, 0 s, 5 min, 0 to 5 min, 0 to 5 min",
        "ANGLE, 20 deg, 160 deg, 20 to 160 deg, 20 to 160 deg",
    })
    void rangesAreToldInRoundFiguresInsideWhatIsTaken(
            Dimension dimension, String min, String max, String si, String us) {
        assertEquals(new ToldRange(si, us), ToldRange.of(dimension, min, max));
    }
}
