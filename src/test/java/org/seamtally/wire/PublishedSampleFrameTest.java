package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The figures of the sample frame with every optional part given. They were computed apart from this project, by the
 * model as it is stated, before the program was written: seams and deposits by another integration, the start surge by
 * another integrator.
 */
class PublishedSampleFrameTest {

    /** Five digits were printed. */
    private static final double FIVE_DIGITS = 1e-5;

    private static final JsonNode ANSWER = RequestTree.sample().estimate();

    @ParameterizedTest
    @CsvSource({
        "perFrame.seam.length, 1458.301, mm",
        "perFrame.seam.depositVolume, 7568.34, mm3",
        "perFrame.filler.mass, 59.4114, g",
        "perFrame.filler.consumed, 64.1900, g",
        "perFrame.arc.time, 838.504, s",
        "perFrame.arc.tackTime, 84, s",
        "perFrame.arc.energy, 0.298458, kWh", // 1.07445 MJ
        "perFrame.gas.arc, 108.843, L",
        "perFrame.gas.preFlow, 4.36551, L",
        "perFrame.gas.postFlow, 78.5792, L",
        "perFrame.labour.handling, 2152.51, s",
        "perFrame.labour.fitUp, 7200, s",
        "perFrame.labour.setUp, 900, s",
        "perFrame.labour.preheat, 240, s",
        "perFrame.labour.total, 11415.0, s",
        "perFrame.preheat.energy, 430.912, kJ",
        "joints[0].seam.length, 175.9137, mm",
        "joints[0].seam.depositVolume, 814.383, mm3",
        "joints[0].arc.time, 88.1367, s",
        "joints[0].preheat.content, 36.959, kJ",
        "joints[0].preheat.losses, 140.875, W",
        "joints[0].preheat.energy, 215.456, kJ",
        "joints[3].arc.time, 39.2699, s",
    })
    void figure(String path, double printed, String unit) {
        JsonNode quantity = RequestTree.at(ANSWER, path);
        assertEquals(printed, quantity.path("value").doubleValue(), FIVE_DIGITS * printed);
        assertEquals(unit, quantity.path("unit").textValue());
    }

    @Test
    void startsOfAFrame() {
        assertEquals(74, RequestTree.at(ANSWER, "perFrame.gas.starts").intValue());
    }

    /** The integrator apart from this project promised four digits. */
    @Test
    void startSurgeOfAFrame() {
        JsonNode surge = RequestTree.at(ANSWER, "perFrame.gas.startSurge");
        assertEquals(20.149, surge.path("value").doubleValue(), 1e-4 * 20.149);
        assertEquals("L", surge.path("unit").textValue());
    }

    /** 1.07445 MJ. */
    @Test
    void electricityInMegajoules() {
        double kilowattHours =
                RequestTree.at(ANSWER, "perFrame.arc.energy.value").doubleValue();
        assertEquals(1.07445, 3.6 * kilowattHours, FIVE_DIGITS * 1.07445);
    }

    @ParameterizedTest
    @CsvSource({
        "0, labour, 1236.63",
        "1, filler, 10.61",
        "2, gas, 15.72",
        "3, electricity, 0.29",
        "4, fuel, 0.26",
        "5, overhead, 189.53",
        "6, margin, 363.26"
    })
    void costLineForTheSixFrames(int index, String item, String amount) {
        JsonNode line = RequestTree.at(ANSWER, "cost.lines[" + index + "]");
        assertEquals(item, line.path("item").textValue());
        assertEquals(amount, line.path("amount").textValue());
    }

    @Test
    void totalForTheSixFrames() {
        JsonNode cost = ANSWER.path("cost");
        assertEquals("1816.30", cost.path("total").textValue());
        assertEquals("302.72", cost.path("perFrame").textValue(), "1816.30/6 = 302.7166…");
        assertEquals("USD", cost.path("currency").textValue());
        assertEquals("welding only", cost.path("heading").textValue());
        assertEquals(7, cost.path("lines").size());
    }

    /** The sleeve's arc time is ruled by the greatest travel speed: its seam at 6 in/min. */
    @Test
    void theSleeveIsWeldedAtTheGreatestSpeed() {
        assertEquals(
                2.54, RequestTree.at(ANSWER, "joints[3].arc.travelSpeed.value").doubleValue(), 1e-9);
        assertEquals(
                Math.PI * 31.75 / 2.54,
                RequestTree.at(ANSWER, "joints[3].arc.time.value").doubleValue(),
                1e-7);
    }

    @Test
    void aPlugHasNoSeamAndNoSpeed() {
        JsonNode plug = RequestTree.at(ANSWER, "joints[4]");
        assertEquals(0, RequestTree.at(plug, "seam.length.value").doubleValue());
        assertNull(plug.path("arc").get("travelSpeed"));
        assertNull(plug.path("arc").get("heatInput"));
        assertNull(plug.path("seam").get("dihedralAngle"));
        assertEquals(4, RequestTree.at(ANSWER, "perFrame.plugs").intValue());
        // π/4 · 9.525² · 2.413 mm³
        assertEquals(
                Math.PI / 4 * 9.525 * 9.525 * 2.413,
                RequestTree.at(plug, "seam.depositVolume.value").doubleValue(),
                1e-6);
    }
}
