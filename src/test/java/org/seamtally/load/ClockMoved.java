package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * Two replicas share a batch, quotes and a price book; the clock of one is right, the other's is moved, hours ahead and
 * behind, while they work. No line is lost or doubled, the results are those of replicas that agree, no chunk in good hands
 * is handed out again, and what is written is in order and in time.
 */
public final class ClockMoved {

    // the clock that moves is a library's, put in front of the system's
    private static final Path LIBRARY = Path.of("/usr/lib/x86_64-linux-gnu/faketime/libfaketime.so.1");
    private static final List<String> MOVES = List.of("+3h", "-3h", "+0");
    // both write to one database; what differs between its clock and ours is the machine's own time to answer
    private static final Duration IN_TIME = Duration.ofSeconds(30);

    private final Path work;
    private final Path jobs;
    private final long frames;
    private final MadeQuotes bodies;

    private ClockMoved(Path work, Path jobs, long frames, long seed) {
        this.work = work;
        this.jobs = jobs;
        this.frames = frames;
        this.bodies = new MadeQuotes("Clock", seed, 3);
    }

    /** @param args folder to work in, job file, frames in it, seed */
    public static void main(String[] args) throws Exception {
        if (!Files.exists(LIBRARY)) {
            throw new IllegalStateException("there is no " + LIBRARY + ": Debian's package faketime brings it");
        }
        System.out.println("seed " + args[3]);
        ClockMoved moved =
                new ClockMoved(Path.of(args[0]), Path.of(args[1]), Long.parseLong(args[2]), Long.parseLong(args[3]));
        try (PostgresServer server = new PostgresServer(moved.work.resolve("postgres-data"))) {
            moved.run(server);
        }
    }

    private void run(PostgresServer server) throws Exception {
        Path clock = work.resolve("clock");
        Files.writeString(clock, "+0\n");
        Path log = work.resolve("clock-moved.log");
        Map<String, String> moves = Map.of(
                "LD_PRELOAD",
                LIBRARY.toString(),
                "FAKETIME_TIMESTAMP_FILE",
                clock.toString(),
                "FAKETIME_CACHE_DURATION",
                "1",
                // what is measured within a process is no clock on the wall
                "FAKETIME_DONT_FAKE_MONOTONIC",
                "1");
        try (ServiceProcess right = ServiceProcess.start(List.of("-Xmx256m"), server.settings(), log);
                ServiceProcess moved = ServiceProcess.start(List.of("-Xmx256m"), server.settings(), moves, log)) {
            right.awaitReady();
            moved.awaitReady();
            KeptBatchClient batches = new KeptBatchClient(() -> right);
            String agreed = batches.send(jobs, "agreed");
            batches.awaitDone(agreed);
            Path expected = results(batches, agreed, "agreed");
            Acknowledged acknowledged = new Acknowledged();
            HandedOut handed = new HandedOut(server.url(), PostgresServer.USER, PostgresServer.USER);
            int versions = 0;
            for (String move : MOVES) {
                Files.writeString(clock, move + "\n");
                // until the library has seen it
                Thread.sleep(1_500);
                KeptBatchClient there = new KeptBatchClient(() -> moved);
                String batch = there.send(jobs, "moved" + move);
                int steals = 0;
                while (!batches.done(batch)) {
                    steals = Math.max(steals, handed.mostOften());
                    versions = write(versions, right, moved, acknowledged);
                }
                Kept.same(expected, results(batches, batch, "moved" + move));
                System.out.println("clock " + move + ": results identical; a chunk was handed out at most " + steals
                        + " times; " + versions + " price-book versions so far");
                if (steals > 1) {
                    throw new AssertionError("a chunk in good hands was handed out again");
                }
            }
            acknowledged.checkAllAndNothingElse(new KeptClient(() -> right));
            inOrder(new KeptClient(() -> moved).read("/v1/price-books/Clock").get("versions"));
        }
    }

    private Path results(KeptBatchClient batches, String batch, String name) throws Exception {
        Path results = work.resolve("clock-" + name + ".ndjson");
        batches.results(batch, results);
        Kept.check(results, frames);
        return results;
    }

    /** A version by the one replica and the next by the other, a quote likewise; each is in time by the right clock. */
    private int write(int versions, ServiceProcess right, ServiceProcess moved, Acknowledged acknowledged)
            throws Exception {
        KeptClient client = new KeptClient(() -> versions % 2 == 0 ? right : moved);
        JsonNode version = made(client.price("Clock", versions, bodies.version()));
        acknowledged.version(version);
        String body = bodies.quote();
        JsonNode quote = made(client.create(body, "clock-" + versions));
        acknowledged.revision(quote);
        // the other one knows the key: it is kept once
        KeptClient other = new KeptClient(() -> versions % 2 == 0 ? moved : right);
        JsonNode again = made(other.create(body, "clock-" + versions));
        if (!again.equals(quote)) {
            throw new AssertionError("another answer to one key: " + quote + "\n" + again);
        }
        return versions + 1;
    }

    private static JsonNode made(HttpResponse<String> answer) throws Exception {
        if (answer.statusCode() != 201) {
            throw new AssertionError(KeptClient.told(answer));
        }
        JsonNode made = KeptClient.JSON.readTree(answer.body());
        Duration off = Duration.between(Instant.parse(made.get("made").asText()), Instant.now());
        if (off.abs().compareTo(IN_TIME) > 0) {
            throw new AssertionError("made at another time than now, off by " + off + ": " + made);
        }
        return made;
    }

    private static void inOrder(JsonNode versions) {
        Instant last = Instant.MIN;
        for (JsonNode version : versions) {
            Instant made = Instant.parse(version.get("made").asText());
            if (made.isBefore(last)) {
                throw new AssertionError("made before the version before it: " + versions);
            }
            last = made;
        }
        System.out.println(versions.size() + " versions in the order of their times");
    }
}
