package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhraseTest {

    @Test
    void quantitiesAreToldInTheReadersUnits() {
        Phrase phrase = Phrase.of(
                "Preheat to {}: the wall is {}, above {}.",
                Phrase.measured(Dimension.TEMPERATURE, 422.15),
                Phrase.measured(Dimension.LENGTH, 0.25 * 0.0254),
                Phrase.either("3.2 mm", "1/8 in"));
        assertEquals("Preheat to 149 °C: the wall is 6.35 mm, above 3.2 mm.", phrase.in(UnitSystem.SI));
        assertEquals("Preheat to 300 °F: the wall is 0.25 in, above 1/8 in.", phrase.in(UnitSystem.US));
    }

    /** Three digits, or all before the point; the last one half up; no zeros at the end. */
    @ParameterizedTest
    @CsvSource({
        "LENGTH, 0.00123456, 1.23 mm",
        "LENGTH, 0.001235, 1.24 mm",
        "LENGTH, 12.3456, 12346 mm",
        "LENGTH, 0.002, 2 mm",
        "LENGTH, 0, 0 mm",
        "TEMPERATURE, 273.65, 1 °C",
        "TEMPERATURE, 263.15, -10 °C",
        "FLOW, 0.00015, 9 L/min",
        "AREA, 0.0000125, 12.5 mm²",
        "HYDROGEN, 5, 5 mL/100 g"
    })
    void figuresAreRoundedForAReader(Dimension dimension, double si, String told) {
        assertEquals(told, Phrase.of("{}", Phrase.measured(dimension, si)).in(UnitSystem.SI));
    }

    @Test
    void moreDigitsTellAValueFromABound() {
        assertEquals(
                "3.2005 mm",
                Phrase.of("{}", Phrase.measured(Dimension.LENGTH, 3.2005e-3, 6)).in(UnitSystem.SI));
    }

    @Test
    void phrasesGoIntoPhrases() {
        Phrase due = Phrase.join(", ", List.of(Phrase.of("a {}"), Phrase.of("b {}", Phrase.either("1 mm", "2 in"))));
        Phrase whole = Phrase.of("Due: {}; {}.", due, Phrase.of("so"));
        assertEquals(
                "Due: a {}, b 1 mm; so.", whole.in(UnitSystem.SI), "braces of somebody else's words are no places");
        assertEquals("Due: a {}, b 2 in; so.", whole.in(UnitSystem.US));
        assertEquals("", Phrase.join(", ", List.of()).in(UnitSystem.US));
        assertEquals(whole, Phrase.of("Due: {}; {}.", due, Phrase.of("so")));
    }

    @Test
    void partsAndPlacesGoTogether() {
        assertThrows(IllegalArgumentException.class, () -> Phrase.of("none", Phrase.of("one")));
        assertThrows(IllegalArgumentException.class, () -> Phrase.of("{} {}", Phrase.of("one")));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Phrase(List.of("a"), List.of((Phrase.Figure) Phrase.measured(Dimension.LENGTH, 1))));
    }
}
