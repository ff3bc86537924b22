package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The committed document against the one that the program gives out. {@code mvn -Popenapi verify} refreshes it. */
@QuarkusTest
class OpenApiDocumentTest {

    private static final Path COMMITTED = Path.of("openapi", "openapi.yaml");
    private static final String REFRESH = "; mvn -Popenapi verify refreshes " + COMMITTED;

    @Test
    void theCommittedDocumentIsTheGeneratedOne() throws IOException {
        assertTrue(Files.isRegularFile(COMMITTED), "it is missing" + REFRESH);
        YAMLMapper yaml = new YAMLMapper();
        JsonNode committed = yaml.readTree(Files.readString(COMMITTED));
        JsonNode generated = yaml.readTree(given().get("/q/openapi?format=yaml").asString());
        assertTrue(generated.path("paths").size() >= RequestBodies.values().length, "the generated one is short");
        List<String> differences = new ArrayList<>();
        compare("", committed, generated, differences);
        assertEquals(List.of(), differences, "the committed document is not the program's" + REFRESH);
    }

    /** Tells where two trees differ, a line for each place. */
    private static void compare(String path, JsonNode committed, JsonNode generated, List<String> differences) {
        if (committed.equals(generated)) {
            return;
        }
        if (committed.isObject() && generated.isObject()) {
            Set<String> names = new TreeSet<>();
            committed.fieldNames().forEachRemaining(names::add);
            generated.fieldNames().forEachRemaining(names::add);
            names.forEach(name -> compare(path + "/" + name, committed.path(name), generated.path(name), differences));
        } else {
            differences.add(path + ": committed " + shown(committed) + ", generated " + shown(generated));
        }
    }

    private static String shown(JsonNode node) {
        String text = node.isMissingNode() ? "nothing" : node.toString();
        return text.length() <= 100 ? text : text.substring(0, 100) + "…";
    }
}
