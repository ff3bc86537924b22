package org.seamtally.load;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Hundreds of clients that send a byte now and then, or nothing, or never read what they are answered. Estimates of others
 * go on meanwhile, the service ends such connections within its time-outs, and its memory stays bounded.
 */
public final class SlowClients {

    private static final Duration BYTE_EVERY = Duration.ofMillis(500);
    private static final Duration ESTIMATED_WITHIN = Duration.ofSeconds(30);
    // longer than an estimate may take on a busy machine: nothing goes over its connection meanwhile
    private static final Duration IDLE = Duration.ofSeconds(40);
    private static final int HEAP_MB = 256;
    // heap, and what a virtual machine needs besides: code, classes, threads, buffers
    private static final long MOST_MEMORY = (HEAP_MB + 450L) << 20;
    private static final int LONG_ANSWER_JOINTS = 1_000;

    private final Path work;
    private final int each;
    private final long seed;
    private final List<SlowClient> clients = new ArrayList<>();
    private Duration longest = Duration.ZERO;

    private SlowClients(Path work, int each, long seed) {
        this.work = work;
        this.each = each;
        this.seed = seed;
    }

    /** @param args folder to work in, clients of each way, seconds that a request may take to arrive and an answer to be read, seed */
    public static void main(String[] args) throws Exception {
        new SlowClients(Path.of(args[0]), Integer.parseInt(args[1]), Long.parseLong(args[3]))
                .run(Integer.parseInt(args[2]));
    }

    private void run(int seconds) throws Exception {
        System.out.println("seed " + seed + ", " + each + " of each of " + List.of(SlowClient.Way.values())
                + ", time-outs of " + seconds + " s");
        Map<String, String> settings = Map.of(
                "seamtally.database.url", "jdbc:h2:mem:slow",
                "quarkus.http.read-timeout", seconds + "s",
                "quarkus.http.idle-timeout", IDLE.toSeconds() + "s");
        byte[] longRequest =
                new MadeQuotes("Slow", seed, LONG_ANSWER_JOINTS).estimate().getBytes(StandardCharsets.UTF_8);
        try (Replicas service = new Replicas(1, settings, work.resolve("slow-clients.log"))) {
            ServiceProcess process = service.get();
            KeptClient others = new KeptClient(service);
            estimate(others);
            long before = process.sockets();
            long memory = process.mostMemory();
            for (int i = 0; i < each; i++) {
                for (SlowClient.Way way : SlowClient.Way.values()) {
                    clients.add(new SlowClient(way, process.port(), longRequest));
                }
            }
            // three times over: a byte that arrives may begin a time anew, once
            long end = System.nanoTime()
                    + IDLE.multipliedBy(3).plusSeconds(3L * seconds).toNanos();
            int estimates = 0;
            long nextByte = 0;
            while (process.sockets() > before + 2) {
                if (System.nanoTime() > end) {
                    throw new AssertionError("not ended by the service: " + open() + ", sockets held "
                            + process.sockets() + ", before " + before);
                }
                if (System.nanoTime() > nextByte) {
                    clients.forEach(SlowClient::dawdle);
                    nextByte = System.nanoTime() + BYTE_EVERY.toNanos();
                }
                estimate(others);
                estimates++;
                Thread.sleep(20);
            }
            System.out.println("of " + clients.size()
                    + " connections the service holds none; of those, not seen to be ended by"
                    + " their clients, who have not read so far: " + open() + "; meanwhile " + estimates
                    + " estimates of others, each within " + longest.toMillis() + " ms; memory " + (memory >> 20)
                    + " MiB before, at most " + (process.mostMemory() >> 20));
            if (process.mostMemory() > MOST_MEMORY) {
                throw new AssertionError("more memory than " + (MOST_MEMORY >> 20) + " MiB");
            }
        } finally {
            for (SlowClient client : clients) {
                client.close();
            }
        }
    }

    private void estimate(KeptClient others) throws Exception {
        long from = System.nanoTime();
        HttpResponse<String> answer = others.estimate();
        // those who never read have asked for much: while that is worked out, others may be told to come again
        while (answer.statusCode() == 503 && System.nanoTime() - from < ESTIMATED_WITHIN.toNanos()) {
            Thread.sleep(answer.headers().firstValueAsLong("Retry-After").orElseThrow() * 1_000);
            answer = others.estimate();
        }
        if (answer.statusCode() != 200) {
            throw new AssertionError("an estimate of others: " + KeptClient.told(answer));
        }
        Duration took = Duration.ofNanos(System.nanoTime() - from);
        longest = took.compareTo(longest) > 0 ? took : longest;
        if (took.compareTo(ESTIMATED_WITHIN) > 0) {
            throw new AssertionError("an estimate of others took " + took + "; " + open());
        }
    }

    /** Connections that are seen to be open. */
    private Map<SlowClient.Way, Integer> open() {
        Map<SlowClient.Way, Integer> open = new EnumMap<>(SlowClient.Way.class);
        clients.stream()
                .filter(client -> !client.isClosed())
                .forEach(client -> open.merge(client.way(), 1, Integer::sum));
        return open;
    }
}
