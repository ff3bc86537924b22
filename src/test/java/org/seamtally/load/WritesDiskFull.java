package org.seamtally.load;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/**
 * Quotes and price books are written to the embedded database on a small disk until it is full. The refusals must say when
 * to come back, estimates must go on, and with room again all must be acknowledged that was begun; the service, and a new
 * process, must have each acknowledged write once, whole.
 */
public final class WritesDiskFull {

    private static final int WRITERS = 4;
    private static final int REFUSALS = 20;
    private static final long FULL_WITHIN_NS = 180_000_000_000L;

    private WritesDiskFull() {}

    /** @param args folder on the small disk, folder to work in, bytes of ballast on the disk, seed */
    public static void main(String[] args) throws Exception {
        Path disk = Path.of(args[0]);
        Path log = Path.of(args[1]).resolve("writes-disk-full.log");
        long seed = Long.parseLong(args[3]);
        System.out.println("seed " + seed);
        Map<String, String> settings = Map.of(
                "seamtally.database.url", "jdbc:h2:file:" + disk.resolve("kept").toAbsolutePath());
        // room that is given back later
        Path ballast = disk.resolve("ballast");
        Files.write(ballast, new byte[Integer.parseInt(args[2])]);
        Acknowledged acknowledged;
        try (Replicas service = new Replicas(1, settings, log);
                Writers writers = new Writers(WRITERS, seed, service)) {
            KeptClient client = new KeptClient(service);
            long end = System.nanoTime() + FULL_WITHIN_NS;
            while (writers.refused() < REFUSALS) {
                writers.check();
                if (System.nanoTime() > end) {
                    throw new AssertionError("the disk was not full in time: use a smaller one");
                }
                Thread.sleep(50);
            }
            HttpResponse<String> estimate = client.estimate();
            if (estimate.statusCode() != 200) {
                throw new AssertionError("an estimate with the disk full: " + KeptClient.told(estimate));
            }
            System.out.println("the disk is full: " + writers.refused() + " writes told to come back, estimates go on");
            Files.delete(ballast);
            acknowledged = writers.end();
            System.out.println("with room again the service went on by itself; " + writers.refused()
                    + " writes were told to come back in all");
            acknowledged.checkAllAndNothingElse(client);
        }
        try (Replicas service = new Replicas(1, settings, log)) {
            acknowledged.checkAllAndNothingElse(new KeptClient(service));
        }
        System.out.println("a new process has them too");
    }
}
