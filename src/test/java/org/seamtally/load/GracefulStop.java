package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One of two replicas is told to stop (SIGTERM) while it works out long estimates, keeps quotes and works on a batch. What it
 * has accepted it answers, whole; it gives its chunks back at once, and the other replica ends the batch; it ends by itself
 * within a bound.
 */
public final class GracefulStop {

    private static final int REQUESTS = 8;
    private static final int JOINTS = 300;
    // what it waits for requests, for chunks, and room for a busy machine
    private static final Duration ENDS_WITHIN = Duration.ofSeconds(45);
    private static final Duration BEGUN_WITHIN = Duration.ofSeconds(30);
    private static final Pattern UNDER_WAY =
            Pattern.compile("(?m)^http_server_active_requests(?:\\{[^}]*})? ([0-9.]+)");

    private final Path work;
    private final long seed;

    private GracefulStop(Path work, long seed) {
        this.work = work;
        this.seed = seed;
    }

    /** @param args folder to work in, job file, frames in it, seed */
    public static void main(String[] args) throws Exception {
        new GracefulStop(Path.of(args[0]), Long.parseLong(args[3])).run(Path.of(args[1]), Long.parseLong(args[2]));
    }

    private void run(Path jobs, long frames) throws Exception {
        System.out.println("seed " + seed);
        try (PostgresServer server = new PostgresServer(work.resolve("postgres-data"));
                Replicas replicas = new Replicas(2, settings(server), work.resolve("graceful-stop.log"))) {
            ServiceProcess leaves = replicas.replica(0);
            ServiceProcess stays = replicas.replica(1);
            KeptBatchClient batches = new KeptBatchClient(() -> stays);
            String batch = batches.send(jobs, "stop");
            Picks picks = new Picks(server.url(), PostgresServer.USER, PostgresServer.USER);
            await("it has chunks in hand", () -> picks.unfinishedBy(leaves.pid()) > 0);

            List<CompletableFuture<HttpResponse<String>>> under = new ArrayList<>();
            MadeQuotes bodies = new MadeQuotes("Stop", seed, JOINTS);
            for (int i = 0; i < REQUESTS; i++) {
                boolean kept = i % 2 == 0;
                String body = kept ? bodies.quote() : bodies.estimate();
                under.add(ServiceProcess.HTTP.sendAsync(
                        request(leaves, kept ? "/v1/quotes" : "/v1/frame-estimates", body, "stop-" + i),
                        HttpResponse.BodyHandlers.ofString()));
            }
            await("requests are under way", () -> underWay(leaves) > REQUESTS / 2);
            long accepted = under.stream().filter(answer -> !answer.isDone()).count();

            long from = System.nanoTime();
            leaves.terminate();
            if (!leaves.awaitEnd(ENDS_WITHIN)) {
                throw new AssertionError("it did not end within " + ENDS_WITHIN);
            }
            long took = System.nanoTime() - from;
            int answered = 0;
            List<JsonNode> quotes = new ArrayList<>();
            for (CompletableFuture<HttpResponse<String>> answer : under) {
                HttpResponse<String> got = answer.get(1, TimeUnit.SECONDS);
                if (got.statusCode() != 200 && got.statusCode() != 201) {
                    throw new AssertionError("accepted, and then: " + KeptClient.told(got));
                }
                JsonNode json = KeptClient.JSON.readTree(got.body());
                if (got.statusCode() == 201) {
                    quotes.add(json);
                }
                answered++;
            }
            System.out.println(accepted + " requests under way when told to stop; all " + answered
                    + " answered, and ended after " + seconds(took));
            int left = picks.unfinishedBy(leaves.pid());
            if (left > 0) {
                throw new AssertionError(left + " chunks are still in the hands of who has ended");
            }
            Acknowledged kept = new Acknowledged();
            quotes.forEach(kept::revision);
            kept.checkAllAndNothingElse(new KeptClient(() -> stays));

            if (batches.done(batch)) {
                throw new AssertionError("the batch ended too early to show anything: more frames are needed");
            }
            batches.awaitDone(batch);
            Path results = work.resolve("graceful-stop.results.ndjson");
            batches.results(batch, results);
            Kept.check(results, frames);
            System.out.println("its chunks were given back; the other replica ended the batch");
        }
    }

    /** None is shed for what waits before it: what is under way when it is told to stop has to be answered. */
    private static Map<String, String> settings(PostgresServer server) {
        Map<String, String> settings = new HashMap<>(server.settings());
        settings.put("seamtally.estimates.longest-wait", "1M");
        settings.put("seamtally.estimates.waiting-bytes", "10485760");
        return settings;
    }

    private static HttpRequest request(ServiceProcess service, String path, String body, String key) {
        HttpRequest.Builder request = HttpRequest.newBuilder(service.uri(path))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .timeout(Duration.ofMinutes(2));
        return (path.equals("/v1/quotes") ? request.header("Idempotency-Key", key) : request).build();
    }

    private static double underWay(ServiceProcess service) throws Exception {
        Matcher active = UNDER_WAY.matcher(
                new KeptClient(() -> service).get("/q/metrics").body());
        double sum = 0;
        while (active.find()) {
            sum += Double.parseDouble(active.group(1));
        }
        return sum;
    }

    private interface Condition {
        boolean holds() throws Exception;
    }

    private static void await(String what, Condition condition) throws Exception {
        long end = System.nanoTime() + BEGUN_WITHIN.toNanos();
        while (!condition.holds()) {
            if (System.nanoTime() > end) {
                throw new AssertionError("not within " + BEGUN_WITHIN + ": " + what);
            }
            Thread.sleep(10);
        }
    }

    private static String seconds(long nanos) {
        return String.format(java.util.Locale.ROOT, "%.1f s", nanos / 1e9);
    }
}
