package org.seamtally.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.restassured.RestAssured;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.util.Locale;
import java.util.function.BooleanSupplier;

/** Frames for job files, and what is asked of their results. */
final class Frames {

    private Frames() {}

    /** A small frame as a line, its line feed included: each number has a fillet length of its own. */
    static String line(int number) {
        return frame(number) + "\n";
    }

    static String frame(int number) {
        return String.format(
                Locale.ROOT,
                "{\"frame\":{\"name\":\"tab %d\",\"joints\":[{\"kind\":\"plate-fillet\",\"plate\":{\"thickness\":\"3 mm\"},"
                        + "\"length\":\"%d mm\"}]}}",
                number,
                10 + number % 1000);
    }

    static String lines(int count) {
        StringBuilder all = new StringBuilder();
        for (int i = 1; i <= count; i++) {
            all.append(line(i));
        }
        return all.toString();
    }

    /** A line that is refused. */
    static final String BAD_LINE = "{\"frame\":{\"joints\":[]}}\n";

    static final String CSV_HEADER = "frame,kind,plate thickness [mm],length [mm]\r\n";

    static String row(int number) {
        return "tab " + number + ",plate-fillet,3," + (10 + number % 1000) + "\r\n";
    }

    static String rows(int count) {
        StringBuilder all = new StringBuilder(CSV_HEADER);
        for (int i = 1; i <= count; i++) {
            all.append(row(i));
        }
        return all.toString();
    }

    /** A request with a body of just this type: the client adds no charset of its own. */
    static RequestSpecification request(String type) {
        return RestAssured.given()
                .config(RestAssuredConfig.config()
                        .encoderConfig(EncoderConfig.encoderConfig()
                                .encodeContentTypeAs(type, ContentType.BINARY)
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)))
                .contentType(type);
    }

    static String violation(JsonNode problem) {
        return problem.at("/violations/0/key").asText();
    }

    /** Waits until something is so, and fails where it is not after a long while. */
    static void await(String what, BooleanSupplier so) throws InterruptedException {
        long deadline = System.nanoTime() + 60_000_000_000L;
        while (!so.getAsBoolean()) {
            if (System.nanoTime() > deadline) {
                throw new AssertionError("in vain: " + what);
            }
            Thread.sleep(20);
        }
    }
}
