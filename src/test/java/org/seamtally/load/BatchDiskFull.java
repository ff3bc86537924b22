package org.seamtally.load;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Sends batches to the embedded database on a small disk until it is full. The refusal must be clear, estimates and what
 * was acknowledged must stay, and nothing may be spoilt: with room again the service, and after it a new process, must have
 * every acknowledged batch with all its lines.
 */
public final class BatchDiskFull {

    private static final int MOST_BATCHES = 200;

    private BatchDiskFull() {}

    /** @param args folder on the small disk, folder to work in, job file, frames in it */
    public static void main(String[] args) throws Exception {
        Path disk = Path.of(args[0]);
        Path work = Path.of(args[1]);
        Path jobs = Path.of(args[2]);
        long frames = Long.parseLong(args[3]);
        Path log = work.resolve("disk-full.log");
        Map<String, String> settings = Map.of(
                "seamtally.database.url", "jdbc:h2:file:" + disk.resolve("kept").toAbsolutePath());
        // room that is given back later
        Path ballast = disk.resolve("ballast");
        Files.write(ballast, new byte[8 << 20]);
        List<String> acknowledged = new ArrayList<>();
        try (ServiceProcess service =
                ServiceProcess.start(List.of("-Xmx256m"), settings, log).awaitReady()) {
            KeptBatchClient client = new KeptBatchClient(() -> service);
            String refusal = null;
            for (int i = 0; i < MOST_BATCHES && refusal == null; i++) {
                HttpResponse<String> answer = client.offer(jobs, "disk-" + i);
                if (answer.statusCode() == 202) {
                    acknowledged.add(KeptBatchClient.id(answer));
                    // one at a time: what is left to be worked on must fit into the room given back
                    refusal = client.doneOrRefused(acknowledged.get(i));
                } else {
                    refusal = KeptBatchClient.refusedForNow(answer);
                }
            }
            if (refusal == null) {
                throw new AssertionError("the disk was not full after " + MOST_BATCHES + " batches: use a smaller one");
            }
            System.out.println("after " + acknowledged.size() + " batches: " + refusal);
            Files.delete(ballast);
            for (String batch : acknowledged) {
                client.awaitDone(batch);
            }
            System.out.println("with room again the service went on by itself");
        }
        try (ServiceProcess service =
                ServiceProcess.start(List.of("-Xmx256m"), settings, log).awaitReady()) {
            KeptBatchClient client = new KeptBatchClient(() -> service);
            Path first = null;
            for (String batch : acknowledged) {
                client.awaitDone(batch);
                Path results = work.resolve(batch + ".ndjson");
                client.results(batch, results);
                if (first == null) {
                    Kept.check(results, frames);
                    first = results;
                }
                Kept.same(first, results);
            }
        }
        System.out.println("a new process has all " + acknowledged.size() + " acknowledged batches, whole");
    }
}
