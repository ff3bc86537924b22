package org.seamtally.load;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/**
 * Stops PostgreSQL while a kept batch is worked on. What is kept must answer 503 with Retry-After, estimates must go on, and
 * when the database is back the batch must end with the bytes of an undisturbed run, and the batch sent before must be there.
 */
public final class BatchDatabaseAway {

    private static final Duration AWAY = Duration.ofSeconds(8);

    private BatchDatabaseAway() {}

    /** @param args folder to work in, job file, frames in it */
    public static void main(String[] args) throws Exception {
        Path work = Path.of(args[0]);
        Path jobs = Path.of(args[1]);
        long frames = Long.parseLong(args[2]);
        Path log = work.resolve("database-away.log");
        try (PostgresServer database = new PostgresServer(work.resolve("postgres-data"))) {
            try (ServiceProcess service = ServiceProcess.start(List.of("-Xmx256m"), database.settings(), log)
                    .awaitReady()) {
                KeptBatchClient client = new KeptBatchClient(() -> service);
                String undisturbed = client.send(jobs, "undisturbed");
                client.awaitDone(undisturbed);
                Path expected = work.resolve("undisturbed.results.ndjson");
                client.results(undisturbed, expected);
                Kept.check(expected, frames);

                String disturbed = client.send(jobs, "disturbed");
                awaitProgress(client, disturbed);
                database.stop();
                long back = System.nanoTime() + AWAY.toNanos();
                int refused = 0;
                int estimated = 0;
                while (System.nanoTime() < back) {
                    refused += refusedForNow(service, disturbed);
                    estimated += estimated(service);
                }
                database.start();
                System.out.println("while the database was away: " + refused + " answers 503 with Retry-After, "
                        + estimated + " estimates");
                if (refused == 0 || estimated == 0) {
                    throw new AssertionError("nothing was asked while the database was away");
                }
                client.awaitDone(disturbed);
                Path actual = work.resolve("disturbed.results.ndjson");
                client.results(disturbed, actual);
                Kept.same(expected, actual);
                System.out.println("the batch went on and ended; results identical to the undisturbed run's");
            }
        }
    }

    private static void awaitProgress(KeptBatchClient client, String batch) throws InterruptedException {
        while (client.status(batch).get("counts").get("read").asLong() == 0) {
            Thread.sleep(20);
        }
        if (client.done(batch)) {
            throw new AssertionError("the batch ended before the database was stopped: more frames are needed");
        }
    }

    private static int refusedForNow(ServiceProcess service, String batch) throws IOException, InterruptedException {
        HttpResponse<String> answer = ServiceProcess.HTTP.send(
                HttpRequest.newBuilder(service.uri("/v1/batches/" + batch))
                        .timeout(Duration.ofSeconds(30))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        KeptBatchClient.refusedForNow(answer);
        return 1;
    }

    private static int estimated(ServiceProcess service) throws IOException, InterruptedException {
        HttpResponse<String> answer = new KeptClient(() -> service).estimate();
        if (answer.statusCode() != 200) {
            throw new AssertionError("an estimate while the database was away: " + answer.statusCode());
        }
        return 1;
    }
}
