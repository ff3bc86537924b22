package org.seamtally.load;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.api.Document;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;

/** What makes requests out of the API's description, and what looks at the answers. */
class ApiFuzzTest {

    private static final long SEED = 20261125;
    private static final long REQUESTS = 4000;

    private final ApiDocument document = document();

    private static ApiDocument document() {
        try {
            return ApiDocument.read(Path.of("openapi", "openapi.yaml"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void whatIsMadeFitsTheDescription() {
        Document schemas = Document.of(document.root());
        FuzzRequests maker = new FuzzRequests(document, new KnownThings(), REQUESTS);
        int looked = 0;
        for (ApiDocument.Operation operation : document.operations()) {
            JsonNode media = operation.bodies().get("application/json");
            if (media == null) {
                continue;
            }
            JsonSchema schema = schemas.closed(media.path("schema"));
            for (long seed = SEED; seed < SEED + 40; seed++) {
                FuzzRequest request = maker.of(operation, new Dice(seed));
                if (request.headers.get("Content-Type").equals("application/json")) {
                    JsonNode body = request.parts.get(0).trees().get(0);
                    assertEquals(Set.of(), schema.validate(body), operation.name() + ", seed " + seed + ": " + body);
                    looked++;
                }
            }
        }
        assertTrue(looked > 300, looked + " bodies");
    }

    @Test
    void everyEndpointIsAskedAndANewOneToo() {
        ObjectNode root = document.root().deepCopy();
        ObjectNode post = ((ObjectNode) root.path("paths"))
                .putObject("/v1/new-things/{name}")
                .putObject("post");
        post.putArray("parameters")
                .addObject()
                .put("name", "name")
                .put("in", "path")
                .putObject("schema")
                .put("type", "string");
        post.putObject("requestBody")
                .putObject("content")
                .putObject("application/json")
                .putObject("schema")
                .put("$ref", "#/components/schemas/OneJointRequest");
        post.putObject("responses").putObject("200").put("description", "New.");
        ApiDocument extended = ApiDocument.of(root);
        FuzzRequests maker = new FuzzRequests(extended, new KnownThings(), REQUESTS);
        Set<String> asked = new TreeSet<>();
        for (long seed = SEED; seed < SEED + 1000; seed++) {
            FuzzRequest request = maker.any(new Dice(seed));
            asked.add(request.operation.name());
            if (request.operation.path().equals("/v1/new-things/{name}")) {
                assertTrue(request.path().startsWith("/v1/new-things/"), request.path());
                assertTrue(new String(request.body(), StandardCharsets.UTF_8).contains("\"joint\""));
            }
        }
        assertEquals(document.operations().size() + 1, asked.size());
        assertTrue(asked.contains("POST /v1/new-things/{name}"));
    }

    @Test
    void theSameSeedMakesTheSameRequest() {
        for (long seed = SEED; seed < SEED + 300; seed++) {
            assertArrayEquals(mutated(seed).bytes("localhost"), mutated(seed).bytes("localhost"), "seed " + seed);
        }
    }

    @Test
    void aMutatedRequestIsAnother() {
        int same = 0;
        for (long seed = SEED; seed < SEED + 500; seed++) {
            FuzzRequest mutated = mutated(seed);
            assertFalse(mutated.touched.isEmpty(), "seed " + seed);
            String plain = new String(
                    new FuzzRequests(document, new KnownThings(), REQUESTS)
                            .any(new Dice(seed))
                            .bytes("localhost"),
                    StandardCharsets.UTF_8);
            same += plain.equals(new String(mutated.bytes("localhost"), StandardCharsets.UTF_8)) ? 1 : 0;
        }
        // a field moved to where its like stands, or a header that was to be sent anyway
        assertTrue(same < 25, same + " of 500 are as they were");
    }

    private FuzzRequest mutated(long seed) {
        Dice dice = new Dice(seed);
        FuzzRequest request = new FuzzRequests(document, new KnownThings(), REQUESTS).any(dice);
        Mutations.mutate(request, dice);
        return request;
    }

    private static final String ESTIMATE = "frame-estimate.json";

    /** A golden answer adds up; with one figure changed it does not. */
    @ParameterizedTest
    @CsvSource({
        "/cost/lines/0/amount, '\"1.00\"'",
        "/cost/perFrame, '\"1.00\"'",
        "/joints/0/seam/length/value, 1",
        "/joints/1/count, 77",
        "/joints/0/gas/total/value, 1",
        "/perFrame/gas/startSurge/value, 1",
        "/perFrame/filler/mass/value, 1",
        "/forQuantity/labour/handling/value, 1",
        "/forQuantity/filler/rods, 1.5",
        "/gasShares/welding, 0.9"
    })
    void aChangedFigureIsNoticed(String place, String value) throws IOException {
        JsonNode sound = golden();
        assertEquals(List.of(), AddedUp.faults(sound));
        int slash = place.lastIndexOf('/');
        ((ObjectNode) sound.at(place.substring(0, slash)))
                .set(place.substring(slash + 1), AnswerChecks.JSON.readTree(value));
        assertFalse(AddedUp.faults(sound).isEmpty(), place);
    }

    /** So does one in brief. */
    @ParameterizedTest
    @ValueSource(strings = {"seamLength", "filler", "arcTime"})
    void aChangedFigureInBriefIsNoticed(String name) throws IOException {
        JsonNode sound = AnswerChecks.JSON.readTree(
                Files.readAllBytes(Path.of("src/test/resources/golden/frame-totals.full.us.answer.json")));
        assertEquals(List.of(), AddedUp.faults(sound));
        ((ObjectNode) sound.at("/joints/0/" + name)).put("value", 1);
        assertFalse(AddedUp.faults(sound).isEmpty(), name);
    }

    private static JsonNode golden() throws IOException {
        byte[] request = Files.readAllBytes(
                Path.of("src", "main", "resources", "org", "seamtally", "api", "examples", ESTIMATE));
        Outcome<?> outcome = new Engine("test").frameEstimate(new ByteArrayInputStream(request), UnitSystem.SI);
        return AnswerChecks.JSON.readTree(Json.mapper().writeValueAsBytes(((Outcome.Answered<?>) outcome).answer()));
    }

    @ParameterizedTest
    @CsvSource({
        "500, application/problem+json, '{\"type\":\"/problems/internal\",\"title\":\"t\",\"status\":500}'",
        "422, application/json, '{\"type\":\"/problems/invalid\",\"title\":\"t\",\"status\":422}'",
        "422, application/problem+json, '{\"type\":\"/problems/invalid\",\"title\":\"t\",\"status\":400}'",
        "422, application/problem+json, '{\"type\":\"/problems/invalid\",\"status\":422}'",
        "422, application/problem+json, ''",
        "400, application/problem+json, '{\"type\":\"/p\",\"title\":\"java.lang.Boom\",\"status\":400}'",
        "503, application/problem+json, '{\"type\":\"/p\",\"title\":\"t\",\"status\":503}'",
        "418, application/problem+json, '{\"type\":\"/p\",\"title\":\"t\",\"status\":418}'",
        "200, application/json, '{}'",
        "200, text/plain, 'fine'"
    })
    void anAnswerThatIsNotDueIsNoticed(int status, String type, String body) {
        ApiDocument.Operation deposits = document.operations().stream()
                .filter(operation -> operation.name().equals("POST /v1/deposits"))
                .findFirst()
                .orElseThrow();
        RawConnection.Answer answer =
                new RawConnection.Answer(status, Map.of("content-type", type), body.getBytes(StandardCharsets.UTF_8));
        assertFalse(new AnswerChecks(document)
                .faults(new FuzzRequest(deposits), answer)
                .isEmpty());
    }
}
