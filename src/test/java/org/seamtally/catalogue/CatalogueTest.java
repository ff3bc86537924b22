package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class CatalogueTest {

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void theListOfTablesIsThatOfTheFiles() throws Exception {
        Path folder = Path.of(Catalogue.class.getResource("tubes.csv").toURI()).getParent();
        try (Stream<Path> files = Files.list(folder)) {
            Set<String> tables = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv"))
                    .collect(Collectors.toSet());
            assertEquals(tables, Set.copyOf(Catalogue.TABLES));
        }
    }

    @Test
    void theVersionIsThatOfTheFiles() throws IOException {
        Map<String, byte[]> contents = new TreeMap<>();
        for (String table : Catalogue.TABLES) {
            contents.put(table, Catalogue.class.getResourceAsStream(table).readAllBytes());
        }
        assertEquals(Catalogue.digest(contents), Catalogue.version());
        assertTrue(Catalogue.version().matches("[0-9a-f]{12}"), Catalogue.version());
        for (String table : Catalogue.TABLES) {
            Map<String, byte[]> changed = new TreeMap<>(contents);
            changed.put(table, bytes("other"));
            assertNotEquals(Catalogue.version(), Catalogue.digest(changed), table);
        }
    }

    /** FIPS 180-4: the SHA-256 of nothing starts e3b0c442 98fc. */
    @Test
    void noTablesAtAll() {
        assertEquals("e3b0c44298fc", Catalogue.digest(Map.of()));
    }

    @Test
    void whatMovesBetweenTablesShows() {
        assertNotEquals(
                Catalogue.digest(Map.of("a", bytes("xb"), "c", bytes("y"))),
                Catalogue.digest(Map.of("a", bytes("x"), "c", bytes("by"))));
        assertNotEquals(Catalogue.digest(Map.of("a", bytes("x"))), Catalogue.digest(Map.of("ax", bytes(""))));
        assertNotEquals(Catalogue.digest(Map.of("a", bytes("x"))), Catalogue.digest(Map.of("b", bytes("x"))));
    }

    @Test
    void aMissingTableIsNamed() {
        IllegalStateException missing = assertThrows(IllegalStateException.class, () -> Table.read("nonsense.csv"));
        assertEquals("the catalogue lacks nonsense.csv", missing.getMessage());
    }
}
