package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.function.Supplier;

/** Asks a service for its kept batches, and asks again while it is down. */
final class KeptBatchClient {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Duration LONGEST = Duration.ofMinutes(15);

    private final Supplier<ServiceProcess> service;

    /** @param service the one to ask now: it is asked for anew after each fault */
    KeptBatchClient(Supplier<ServiceProcess> service) {
        this.service = service;
    }

    /** Sends a job file; the batch's id. */
    String send(Path jobs, String key) throws IOException, InterruptedException {
        HttpResponse<String> answer = offer(jobs, key);
        if (answer.statusCode() != 202) {
            throw new IllegalStateException("the batch was not taken: " + answer.statusCode() + " " + answer.body());
        }
        return id(answer);
    }

    /** Sends a job file; whatever is answered. */
    HttpResponse<String> offer(Path jobs, String key) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(service.get().uri("/v1/batches"))
                .header("Content-Type", "application/x-ndjson")
                .header("Idempotency-Key", key)
                .POST(HttpRequest.BodyPublishers.ofFile(jobs))
                .timeout(LONGEST)
                .build();
        return ServiceProcess.HTTP.send(request, HttpResponse.BodyHandlers.ofString());
    }

    /** The id of a batch that was taken. */
    static String id(HttpResponse<String> answer) throws IOException {
        return JSON.readTree(answer.body()).get("id").asText();
    }

    /** The batch's state and counts, or null while the service is down. */
    JsonNode status(String batch) throws InterruptedException {
        try {
            HttpRequest request = HttpRequest.newBuilder(service.get().uri("/v1/batches/" + batch))
                    .timeout(Duration.ofSeconds(10))
                    .build();
            HttpResponse<String> answer = ServiceProcess.HTTP.send(request, HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() == 503) {
                return null;
            }
            if (answer.statusCode() != 200) {
                throw new IllegalStateException("the batch is not there: " + answer.statusCode() + " " + answer.body());
            }
            return JSON.readTree(answer.body());
        } catch (IOException e) {
            return null;
        }
    }

    /** Whether it has ended. */
    boolean done(String batch) throws InterruptedException {
        JsonNode status = status(batch);
        return status != null && status.get("state").asText().equals("done");
    }

    /** Waits for its end. */
    void awaitDone(String batch) throws InterruptedException {
        long end = System.nanoTime() + LONGEST.toNanos();
        while (!done(batch)) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("the batch did not end within " + LONGEST + ": " + status(batch));
            }
            Thread.sleep(250);
        }
    }

    /** Waits for its end, which is null, or for a refusal while it is worked on. */
    String doneOrRefused(String batch) throws IOException, InterruptedException {
        while (true) {
            HttpResponse<String> answer = ServiceProcess.HTTP.send(
                    HttpRequest.newBuilder(service.get().uri("/v1/batches/" + batch))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() != 200) {
                return refusedForNow(answer);
            }
            if (JSON.readTree(answer.body()).get("state").asText().equals("done")) {
                return null;
            }
            Thread.sleep(50);
        }
    }

    /**
     * A refusal that says when to come back.
     *
     * @throws AssertionError where it is another answer
     */
    static String refusedForNow(HttpResponse<String> answer) {
        String told = answer.statusCode() + " " + answer.body();
        if (answer.statusCode() != 503
                || answer.headers().firstValue("Retry-After").isEmpty()) {
            throw new AssertionError("not 503 with Retry-After: " + told);
        }
        return told;
    }

    /** Fetches its results. */
    void results(String batch, Path to) throws InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(service.get().uri("/v1/batches/" + batch + "/results"))
                .timeout(LONGEST)
                .build();
        try {
            HttpResponse<InputStream> answer =
                    ServiceProcess.HTTP.send(request, HttpResponse.BodyHandlers.ofInputStream());
            try (InputStream body = answer.body()) {
                Files.copy(body, to, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
