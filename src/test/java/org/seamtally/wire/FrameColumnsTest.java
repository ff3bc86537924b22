package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

class FrameColumnsTest {

    private static final Engine ENGINE = new Engine("test");

    private static final String JOINTS =
            "\"joints\": [{\"kind\": \"plug\", \"mark\": \"H1\", \"count\": 3, \"holeDiameter\": \"10 mm\", \"depth\": \"3 mm\","
                    + " \"preheat\": {\"temperature\": \"150 degC\", \"source\": \"propane\"}}]";

    private static JobLine line(String name, UnitSystem units) {
        String request = "{\"frame\": {\"name\": \"" + name + "\", \"quantity\": 4, " + JOINTS
                + "}, \"prices\": {\"currency\": \"USD\", \"labour\": \"60/h\"}}";
        return ENGINE.jobLine(new JobFrame(7, request.getBytes(StandardCharsets.UTF_8), null, null), units);
    }

    private static Map<String, String> cells(FrameColumns columns, List<String> record) {
        List<String> header = columns.header();
        assertEquals(header.size(), record.size());
        Map<String, String> cells = new HashMap<>();
        for (int i = 0; i < record.size(); i++) {
            cells.put(header.get(i), record.get(i));
        }
        return cells;
    }

    @ParameterizedTest
    @EnumSource
    void anEstimatesFiguresStandInTheirColumns(UnitSystem units) throws Exception {
        FrameColumns columns = new FrameColumns(units);
        assertEquals(columns.header().size(), new HashSet<>(columns.header()).size(), "no header stands twice");
        byte[] json = line("rack", units).json();
        Map<String, String> cells = cells(columns, columns.record(json));
        assertEquals("estimate", cells.get("record"));
        assertEquals("7", cells.get("line"));
        assertEquals("rack", cells.get("frame"));
        assertEquals("4", cells.get("quantity"));
        assertEquals("3", cells.get("joints"));
        JsonNode estimate = Json.mapper().readTree(json).path("estimate");
        boolean si = units == UnitSystem.SI;
        check(estimate, "/forQuantity/filler/consumed", cells.get("filler consumed [" + (si ? "g" : "lb") + "]"));
        check(estimate, "/forQuantity/gas/startSurge", cells.get("gas start surge [" + (si ? "L" : "ft3") + "]"));
        check(estimate, "/forQuantity/labour/total", cells.get("labour total [s]"));
        check(estimate, "/forQuantity/preheat/fuel", cells.get("preheat fuel [" + (si ? "g" : "lb") + "]"));
        assertEquals("USD", cells.get("currency"));
        assertEquals(estimate.at("/cost/total").textValue(), cells.get("price"));
        assertTrue(cells.get("cautions").contains("no-load"));
        assertNull(cells.get("problem"));
        assertNull(cells.get("read"));
    }

    private static void check(JsonNode estimate, String pointer, String cell) {
        double value = estimate.at(pointer).path("value").doubleValue();
        assertTrue(value > 0, pointer);
        assertEquals(value, new BigDecimal(cell).doubleValue());
        assertTrue(cell.matches("[0-9]+(\\.[0-9]+)?"), cell);
    }

    @Test
    void aLineOfOtherUnitsThanTheHeadersIsAFaultOfTheProgram() {
        byte[] json = line("rack", UnitSystem.US).json();
        assertThrows(IllegalStateException.class, () -> new FrameColumns(UnitSystem.SI).record(json));
    }

    @Test
    void aProblemStandsInItsColumns() {
        FrameColumns columns = new FrameColumns(UnitSystem.SI);
        JobLine line = ENGINE.jobLine(
                new JobFrame(3, "{\"frame\": {\"joints\": []}, \"x\": 1}".getBytes(StandardCharsets.UTF_8), null, null),
                UnitSystem.SI);
        Map<String, String> cells = cells(columns, columns.record(line.json()));
        assertEquals("problem", cells.get("record"));
        assertEquals("3", cells.get("line"));
        assertEquals("/problems/invalid", cells.get("problem"));
        assertTrue(cells.get("violations").contains("x (" + Violation.Key.UNKNOWN_FIELD + "): "));
        assertNull(cells.get("price"));
    }

    @Test
    void theTrailerStandsInItsColumns() {
        FrameColumns columns = new FrameColumns(UnitSystem.US);
        Map<String, String> cells = cells(columns, columns.trailer(5, 3, 2, false));
        assertEquals("trailer", cells.get("record"));
        assertEquals("5", cells.get("read"));
        assertEquals("3", cells.get("done"));
        assertEquals("2", cells.get("refused"));
        assertEquals("false", cells.get("complete"));
        assertNull(cells.get("line"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+cmd", "-2+3", "@sum", "-x"})
    void textThatASpreadsheetWouldRunIsToldToBeText(String name) throws Exception {
        FrameColumns columns = new FrameColumns(UnitSystem.SI);
        byte[] json = line(name, UnitSystem.SI).json();
        JsonNode sent = Json.mapper().readTree(json).at("/estimate/name");
        assertEquals(
                "'" + sent.textValue(), cells(columns, columns.record(json)).get("frame"));
    }
}
