package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

class CautionTest {

    @ParameterizedTest
    @ValueSource(strings = {"", "Fume", "fume ", "-fume", "fume-", "fume--plate", "fume_plate"})
    void aCauseThatIsNoStableWordIsRefused(String cause) {
        assertThrows(IllegalArgumentException.class, () -> new Caution(cause, "text"));
    }

    @Test
    void aBlankTextIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Caution("fume", " "));
        assertEquals("plated-ends-2", new Caution("plated-ends-2", "text").cause());
    }

    /** ANSI Z49.1 and 29 CFR 1910.252, from memory, for what they must speak of. */
    @Test
    void theShopCautionsAreAllThere() {
        List<Caution> all = ShopCautions.all();
        assertEquals(
                List.of(
                        "rules-first",
                        "fume",
                        "argon-in-closed-spaces",
                        "ultraviolet",
                        "hot-metal-and-fuel-gas",
                        "cleanliness",
                        "chlorinated-cleaner",
                        "plated-ends",
                        "thoriated-tungsten",
                        "closed-members"),
                all.stream().map(Caution::cause).toList());
        Set<String> texts = new HashSet<>(
                all.stream().map(caution -> caution.text().in(UnitSystem.SI)).toList());
        assertEquals(all.size(), texts.size());
        assertTrue(text("rules-first").contains("no load was considered"));
        assertTrue(text("rules-first").contains("local codes"));
        assertTrue(text("fume").contains("manganese") && text("fume").contains("hexavalent chromium"));
        assertTrue(text("cleanliness").contains("isopropyl alcohol or acetone, let it dry fully"));
        assertTrue(text("chlorinated-cleaner").startsWith("Never use a chlorinated cleaner"));
        assertTrue(text("chlorinated-cleaner").contains("phosgene"));
        assertTrue(text("closed-members").contains("vent hole"));
        texts.forEach(text -> assertFalse(text.matches("(?i).*(will hold|\\bsafe\\b|guarantee).*"), text));
    }

    private static String text(String cause) {
        return ShopCautions.all().stream()
                .filter(caution -> caution.cause().equals(cause))
                .findFirst()
                .orElseThrow()
                .text()
                .in(UnitSystem.SI);
    }
}
