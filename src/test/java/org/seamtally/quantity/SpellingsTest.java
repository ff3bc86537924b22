package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** How people type quantities: common practice, no source. */
class SpellingsTest {

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = ';',
            value = {
                "LENGTH; 0.095\"; 0.002413",
                "LENGTH; 0.095″; 0.002413",
                "LENGTH; .095in; 0.002413",
                "LENGTH; 95e-3 in; 0.002413",
                "LENGTH; 9.5E-2 inch; 0.002413",
                "LENGTH; +0.095 inches; 0.002413",
                "LENGTH; 0.095 in.; 0.002413",
                "LENGTH; 5. mm; 0.005",
                "LENGTH; 1e+3 mm; 1",
                "LENGTH; 0e999 mm; 0",
                "LENGTH; -0 mm; 0",
                "LENGTH; 25'; 7.62",
                "LENGTH; 25′; 7.62",
                "LENGTH; 25 FT; 7.62",
                "LENGTH; 25 feet; 7.62",
                "LENGTH; 1 foot; 0.3048",
                "LENGTH; 1 ft.; 0.3048",
                "LENGTH; 38.1 MM; 0.0381",
                "LENGTH; 2 M; 2",
                "LENGTH; 3/16 in; 0.0047625",
                "LENGTH; -3/16 in; -0.0047625",
                "LENGTH; 8/16 in; 0.0127",
                "LENGTH; 9/8 in; 0.028575",
                "LENGTH; 1-1/2 in; 0.0381",
                "LENGTH; 1 1/2 in; 0.0381",
                "LENGTH; 1  1/2in; 0.0381",
                "LENGTH; -1-1/2 in; -0.0381",
                "LENGTH; 10 15/16\"; 0.2778125",
                "AREA; 2 mm²; 2e-6",
                "AREA; 2 mm^2; 2e-6",
                "AREA; 2 sq in; 0.00129032",
                "VOLUME; 2 mm³; 2e-9",
                "VOLUME; 2 cc; 2e-6",
                "VOLUME; 2 l; 2e-3",
                "ANGLE; 180°; 3.141592653589793",
                "ANGLE; 180 DEG; 3.141592653589793",
                "ANGLE; 0.785 rad; 0.785",
                "MASS; 10 lbs; 4.5359237",
                "MASS; 16 oz; 0.45359237",
                "TIME; 2 min; 120",
                "TIME; 2 Min; 120",
                "TIME; 300 ms; 0.3",
                "TIME; 2 hr; 7200",
                "TIME; 2 sec; 2",
                "SPEED; 60 ipm; 0.0254",
                "SPEED; 15 cm/min; 0.0025",
                "FLOW; 60 lpm; 0.001",
                "FLOW; 60 l/min; 0.001",
                "FLOW; 60 L/MIN; 0.001",
                "FLOW; 0.36 m³/h; 1e-4",
                "FLOW; 15 cfh; 1.179868608e-4",
                "FLOW; 15 CFH; 1.179868608e-4",
                "FLOW; 15 scfh; 1.179868608e-4",
                "FLOW; 15 SCFH; 1.179868608e-4",
                "GAS_VOLUME; 10 scf; 0.28316846592",
                "GAS_VOLUME; 10 cf; 0.28316846592",
                "GAS_VOLUME; 10 cu ft; 0.28316846592",
                "GAUGE_PRESSURE; 3.4 bar; 340000",
                "GAUGE_PRESSURE; 3.4 Bar; 340000",
                "GAUGE_PRESSURE; 345 KPA; 345000",
                "GAUGE_PRESSURE; 0.3 MPa; 300000",
                "GAUGE_PRESSURE; 10 psig; 68947.57293168361",
                "GAUGE_PRESSURE; 10 PSI; 68947.57293168361",
                "PRESSURE; 10 psia; 68947.57293168361",
                "CURRENT; 90 a; 90",
                "CURRENT; 90 amps; 90",
                "VOLTAGE; 11 volts; 11",
                "POWER; 4 KW; 4000",
                "POWER; 1 MW; 1000000",
                "ENERGY; 2 kwh; 7200000",
                "TEMPERATURE; 50 °C; 323.15",
                "TEMPERATURE; 50°C; 323.15",
                "TEMPERATURE; 50 C; 323.15",
                "TEMPERATURE; 50 c; 323.15",
                "TEMPERATURE; 50 deg C; 323.15",
                "TEMPERATURE; 32 °F; 273.15",
                "TEMPERATURE; 32F; 273.15",
                "TEMPERATURE; 32 deg f; 273.15",
                "TEMPERATURE_DIFFERENCE; 9 degF; 5",
                "TEMPERATURE_DIFFERENCE; 9 degC; 9",
                "COOLING_RATE; 9 degF/s; 5",
                "COOLING_RATE; 1 K/min; 0.016666666666666666",
                "HYDROGEN; 3 ml/100 g; 3",
                "COUNT; 12 pcs; 12",
                "STRESS; 10 ksi; 68947572.93168361",
            })
    void isTaken(Dimension dimension, String text, double si) {
        assertEquals(si, dimension.read(text));
    }

    @Test
    void blanksDoNotMatter() {
        for (String text : new String[] {"1.5in", "1.5   in", "  1.5 in  ", "\t1.5\u00a0in\n", "\u20071.5 in\u202f"}) {
            assertEquals(0.0381, Dimension.LENGTH.read(text), text);
        }
    }

    @Test
    void sixtyFourCharactersAreStillTaken() {
        assertEquals(0.001, Dimension.LENGTH.read("1." + "0".repeat(60) + "mm"));
    }

    @Test
    void theLastExponentThatIsTaken() {
        assertEquals(1e-3, Dimension.LENGTH.read("0." + "0".repeat(19) + "1e20 mm"));
        assertEquals(1e300, Dimension.MASS.read("1e300 kg"));
        assertEquals(Double.MIN_VALUE, Dimension.MASS.read("4.9e-324 kg"));
        assertEquals(1e-300, Dimension.MASS.read("1" + "0".repeat(50) + "e-350 kg"), 1e-310);
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void everySymbolThatIsNamedIsTakenAndSoIsTheExample(Dimension dimension) {
        assertFalse(dimension.unitsTaken().isEmpty());
        for (String unit : dimension.unitsTaken()) {
            assertEquals(dimension.read("300 " + unit), dimension.read("300" + unit));
        }
        // the room's own examples are of a shop's size: none is zero or negative
        assertTrue(dimension.read(dimension.example()) > 0);
    }

    @Test
    void lengthsNameTheirUnits() {
        assertEquals(java.util.List.of("mm", "cm", "m", "in", "ft"), Dimension.LENGTH.unitsTaken());
        assertEquals("1.5 in", Dimension.LENGTH.example());
        assertEquals("a length", Dimension.LENGTH.words());
    }
}
