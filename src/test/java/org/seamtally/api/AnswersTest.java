package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the endpoints answer is what the document says. */
@QuarkusTest
class AnswersTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final Set<String> KEPT = Set.of("/v1/batches", "/v1/quotes", "/v1/price-books", "/v1/backup");

    private Document document;

    @BeforeEach
    void fetch() {
        document = Document.live();
    }

    /** A question that the document holds: an operation, and a body where it takes one. */
    private record Question(Document.Operation operation, String name, JsonNode body) {

        Response ask(String units) {
            RequestSpecification request = given();
            if (units != null) {
                request.queryParam("units", units);
            }
            return body == null
                    ? request.get(operation.path())
                    : request.contentType("application/json")
                            .body(body.toString())
                            .post(operation.path());
        }
    }

    private List<Question> questions() {
        List<Question> all = new ArrayList<>();
        for (Document.Operation operation : document.operations()) {
            if (operation.path().contains("{")
                    || operation.method().equals("post") && operation.body().isMissingNode()) {
                // what is kept is asked for in a test of its own
                continue;
            }
            if (KEPT.contains(operation.path())) {
                continue;
            }
            if (operation.method().equals("get")) {
                all.add(new Question(operation, operation.path(), null));
            } else {
                operation
                        .body()
                        .path("examples")
                        .properties()
                        .forEach(example -> all.add(new Question(
                                operation, example.getKey(), example.getValue().path("value"))));
            }
        }
        return all;
    }

    @Test
    void everyExampleAndEveryListAnswersInBothUnitsAsDocumented() {
        List<Question> questions = questions();
        assertEquals(17, questions.size());
        for (Question question : questions) {
            for (String units : List.of("si", "us")) {
                Response response = question.ask(units);
                String where = question.name() + " in " + units + ": ";
                assertEquals(200, response.statusCode(), where + response.asString());
                assertEquals("application/json", response.contentType().replaceAll(";.*", ""), where);
                JsonNode answer = Document.read(response.asString());
                assertTrue(answer.size() > 0, where + "is empty");
                assertEquals(
                        Set.of(), document.misfits(answer, question.operation().answer()), where);
            }
        }
    }

    @Test
    void whatIsSentInTheExamplesFitsTheDocumentToo() {
        for (Question question : questions()) {
            if (question.body() != null) {
                assertEquals(
                        Set.of(),
                        document.misfits(
                                question.body(), question.operation().body().path("schema")),
                        question.name());
            }
        }
    }

    @Test
    void anAnswerWithAFieldThatIsNotDocumentedWouldBeNoticed() {
        for (Question question : questions()) {
            if (question.body() != null) {
                JsonNode answer = Document.read(question.ask("si").asString());
                ((ObjectNode) answer.path("engine")).put("mood", "good");
                assertEquals(
                        1,
                        document.misfits(answer, question.operation().answer()).size(),
                        question.name());
            }
        }
    }

    @Test
    void theDocumentRefusesWhatTheServiceRefuses() {
        JsonNode request = JSON.createObjectNode().put("$ref", "#/components/schemas/OneJointRequest");
        for (String bad : List.of(
                "{}",
                "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": 6, \"depth\": \"2 mm\"}}",
                "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\", \"count\": 0}}",
                "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\", \"colour\": \"red\"}}",
                "{\"joint\": {\"kind\": \"rivet\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}}",
                "{\"joint\": {\"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}}")) {
            assertNotEquals(Set.of(), document.misfits(Document.read(bad), request), bad);
            Response response =
                    given().contentType("application/json").body(bad).post("/v1/deposits");
            assertEquals(422, response.statusCode(), bad);
        }
    }

    @Test
    void siIsWhatIsAnsweredWhereNoUnitsAreAskedFor() {
        Question question = questions().stream()
                .filter(q -> q.name().equals("deposit"))
                .findFirst()
                .orElseThrow();
        String plain = question.ask(null).asString();
        assertEquals(question.ask("si").asString(), plain);
        JsonNode us = Document.read(question.ask("us").asString());
        assertEquals("mm", Document.read(plain).at("/seam/length/unit").asText());
        assertEquals("in", us.at("/seam/length/unit").asText());
        assertEquals(
                Document.read(plain).at("/seam/length/value").asDouble() / 25.4,
                us.at("/seam/length/value").asDouble(),
                1e-7);
    }

    @Test
    void everyExampleOfAFieldIsTaken() {
        int asked = 0;
        for (Document.Operation operation : document.operations()) {
            if (operation.body().isMissingNode() || operation.path().contains("{") || KEPT.contains(operation.path())) {
                continue;
            }
            JsonNode schema = document.resolved(operation.body().path("schema"));
            for (String kind : kinds()) {
                JsonNode body = filled(schema, kind);
                Response response = given().contentType("application/json")
                        .body(body.toString())
                        .post(operation.path());
                Set<String> keys = new HashSet<>();
                Document.read(response.asString())
                        .path("violations")
                        .forEach(violation -> keys.add(violation.path("key").asText()));
                // with every field given at once some stand against each other: a margin and a markup
                keys.remove("contradiction");
                assertTrue(
                        keys.isEmpty() && (response.statusCode() == 200 || response.statusCode() == 422),
                        operation.path() + " " + kind + ": " + response.asString());
                asked++;
            }
        }
        assertEquals(8 * 5, asked);
    }

    private List<String> kinds() {
        List<String> all = new ArrayList<>();
        document.schema("JointRequest")
                .at("/discriminator/mapping")
                .fieldNames()
                .forEachRemaining(all::add);
        return all;
    }

    /** An object with every field at its example, joints of one kind. */
    private JsonNode filled(JsonNode schema, String kind) {
        if (schema.has("discriminator")) {
            String reference = schema.at("/discriminator/mapping").path(kind).asText();
            return filled(document.root().at(reference.substring(1)), kind);
        }
        if (schema.has("oneOf")) {
            return filled(document.resolved(schema.path("oneOf").get(0)), kind);
        }
        ObjectNode object = JSON.createObjectNode();
        schema.path("properties").properties().forEach(property -> {
            JsonNode field = property.getValue();
            if (field.path("type").asText().equals("array")) {
                int items = Math.max(1, field.path("minItems").asInt());
                for (int i = 0; i < items; i++) {
                    JsonNode item = filled(document.resolved(field.path("items")), kind);
                    // names and marks are not to be alike
                    List.of("name", "mark").stream()
                            .filter(item::has)
                            .forEach(name -> ((ObjectNode) item)
                                    .put(
                                            name,
                                            name
                                                    + object.withArray(property.getKey())
                                                            .size()));
                    object.withArray(property.getKey()).add(item);
                }
            } else {
                object.set(
                        property.getKey(),
                        field.has("examples") ? field.path("examples").get(0) : filled(document.resolved(field), kind));
            }
        });
        return object;
    }

    @Test
    void theSamplesFrameComesOutAsWorkedOutByHand() {
        // per frame: seam length and deposit of the request that is the document's first example; decisions and
        // closed forms of this project, worked out apart from the program
        JsonNode answer = Document.read(questions().stream()
                .filter(q -> q.name().equals("frame-estimate"))
                .findFirst()
                .orElseThrow()
                .ask("si")
                .asString());
        assertEquals(1458.301, answer.at("/perFrame/seam/length/value").asDouble(), 0.0005);
        assertEquals(7568.34, answer.at("/perFrame/seam/depositVolume/value").asDouble(), 0.005);
    }
}
