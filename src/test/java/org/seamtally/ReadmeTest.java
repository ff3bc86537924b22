package org.seamtally;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.seamtally.cli.CommandRunner;

/**
 * What README prints is what the program prints. {@code mvn test -Dtest=ReadmeTest -Dreadme.refresh=true} writes the
 * output of the shell's commands anew; what it says of answers over HTTP may be shortened, and is looked up in them.
 */
@QuarkusTest
class ReadmeTest {

    private static final Path README = Path.of("README.md");
    private static final Pattern BLOCK = Pattern.compile("```console\n\\$ (.*?)\n```", Pattern.DOTALL);
    private static final ObjectMapper JSON = new ObjectMapper();

    /** A command and what follows it in its block. */
    record Shown(String command, String output) {

        static List<Shown> all() throws IOException {
            List<Shown> all = new ArrayList<>();
            Matcher blocks = BLOCK.matcher(Files.readString(README));
            while (blocks.find()) {
                String block = blocks.group(1);
                // a command goes on while its quotes are open
                int end = block.indexOf('\n');
                while (end >= 0 && quotesOpen(block.substring(0, end))) {
                    end = block.indexOf('\n', end + 1);
                }
                all.add(end < 0 ? new Shown(block, "") : new Shown(block.substring(0, end), block.substring(end + 1)));
            }
            return all;
        }

        private static boolean quotesOpen(String text) {
            return text.chars().filter(c -> c == '\'').count() % 2 == 1;
        }

        boolean isShell() {
            return command.startsWith("./seamtally ");
        }

        boolean isCurl() {
            return command.startsWith("curl ");
        }
    }

    @Test
    void readmeShowsCommandsOfBothSorts() throws IOException {
        List<Shown> all = Shown.all();
        assertTrue(all.stream().filter(Shown::isShell).count() >= 2, "shell commands in " + all);
        assertTrue(all.stream().filter(Shown::isCurl).count() >= 2, "curl commands in " + all);
    }

    @TestFactory
    List<DynamicTest> everyShellCommandPrintsWhatReadmeShows() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Shown shown : Shown.all()) {
            if (shown.isShell()) {
                tests.add(DynamicTest.dynamicTest(shown.command, () -> {
                    String printed = run(shown.command).stripTrailing();
                    if (Boolean.getBoolean("readme.refresh")) {
                        String readme = Files.readString(README);
                        String old = "$ " + shown.command + (shown.output.isEmpty() ? "" : "\n" + shown.output);
                        Files.writeString(
                                README, readme.replace(old + "\n```", "$ " + shown.command + "\n" + printed + "\n```"));
                    } else {
                        assertEquals(printed, shown.output);
                    }
                }));
            }
        }
        return tests;
    }

    private static String run(String command) {
        StringWriter out = new StringWriter();
        String[] arguments = command.substring("./seamtally ".length()).split(" +");
        assertEquals(0, CommandRunner.run(new PrintWriter(out), arguments), command);
        return out.toString();
    }

    @TestFactory
    List<DynamicTest> everyCurlCommandAnswersWhatReadmeShows() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (Shown shown : Shown.all()) {
            if (shown.isCurl()) {
                tests.add(DynamicTest.dynamicTest(shown.command, () -> {
                    Matcher url = Pattern.compile("http://\\S+").matcher(shown.command);
                    assertTrue(url.find(), shown.command);
                    String body =
                            shown.command.substring(shown.command.indexOf("-d '") + 4, shown.command.lastIndexOf('\''));
                    String answer = given().contentType("application/json")
                            .body(body)
                            .post(URI.create(url.group()).getPath())
                            .asString();
                    assertContains(JSON.readTree(answer), JSON.readTree(shown.output), "");
                }));
            }
        }
        return tests;
    }

    /** Every field that is shown is in the answer, with the same value. */
    private static void assertContains(JsonNode answer, JsonNode shown, String path) {
        if (shown.isObject()) {
            for (Iterator<Map.Entry<String, JsonNode>> fields = shown.fields(); fields.hasNext(); ) {
                Map.Entry<String, JsonNode> field = fields.next();
                assertTrue(answer.has(field.getKey()), path + "." + field.getKey() + " in " + answer);
                assertContains(answer.get(field.getKey()), field.getValue(), path + "." + field.getKey());
            }
        } else if (shown.isArray()) {
            assertTrue(shown.size() <= answer.size(), path + " in " + answer);
            for (int i = 0; i < shown.size(); i++) {
                assertContains(answer.get(i), shown.get(i), path + "[" + i + "]");
            }
        } else if (shown.isNumber()) {
            // the last bits of sines differ between JDKs
            assertEquals(shown.asDouble(), answer.asDouble(), 1e-8 * Math.abs(shown.asDouble()), path);
        } else {
            assertEquals(shown, answer, path);
        }
    }
}
