package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Asks a service to keep quotes and price books, and for what it keeps; one attempt a call, whatever is answered. */
final class KeptClient {

    static final ObjectMapper JSON = new ObjectMapper();

    private static final Duration LONGEST = Duration.ofSeconds(60);
    private static final String ONE_JOINT =
            "{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}]}}";

    private final Supplier<ServiceProcess> service;

    /** @param service the one to ask now */
    KeptClient(Supplier<ServiceProcess> service) {
        this.service = service;
    }

    HttpResponse<String> create(String body, String key) throws IOException, InterruptedException {
        return send(post("/v1/quotes", body).header("Idempotency-Key", key));
    }

    HttpResponse<String> revise(String quote, int from, String body, String key)
            throws IOException, InterruptedException {
        return send(post("/v1/quotes/" + quote + "/revisions", body)
                .header("Idempotency-Key", key)
                .header("If-Match", "\"" + from + "\""));
    }

    /** @param from the latest version; 0 for none yet */
    HttpResponse<String> price(String book, int from, String body) throws IOException, InterruptedException {
        HttpRequest.Builder request = request("/v1/price-books/" + book)
                .header("Content-Type", "application/json")
                .PUT(HttpRequest.BodyPublishers.ofString(body));
        return send(from == 0 ? request.header("If-None-Match", "*") : request.header("If-Match", "\"" + from + "\""));
    }

    /** An estimate of one joint, for which nothing is kept. */
    HttpResponse<String> estimate() throws IOException, InterruptedException {
        return send(post("/v1/frame-estimates", ONE_JOINT));
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path));
    }

    /** What is there; anything but 200 is a fault. */
    JsonNode read(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = get(path);
        if (answer.statusCode() != 200) {
            throw new AssertionError(path + ": " + told(answer));
        }
        return JSON.readTree(answer.body());
    }

    /** All items of a list, stretch by stretch. */
    List<JsonNode> list(String path) throws IOException, InterruptedException {
        List<JsonNode> items = new ArrayList<>();
        String after = "";
        while (after != null) {
            JsonNode stretch = read(path + "?limit=100" + after);
            stretch.get("items").forEach(items::add);
            after = stretch.has("next")
                    ? "&after=" + stretch.get("next").asText().replace(" ", "%20")
                    : null;
        }
        return items;
    }

    static String told(HttpResponse<String> answer) {
        return answer.statusCode() + " " + answer.body();
    }

    private HttpRequest.Builder post(String path, String body) {
        return request(path).header("Content-Type", "application/json").POST(HttpRequest.BodyPublishers.ofString(body));
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(service.get().uri(path)).timeout(LONGEST);
    }

    private static HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return ServiceProcess.HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }
}
