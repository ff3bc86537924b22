package org.seamtally.load;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * PostgreSQL answers late, and then not at all, while many ask for what is kept. What is kept comes late, or is refused with
 * 503 and Retry-After within a bound; estimates go on as before; when the database answers again everything goes on by
 * itself, and all that was acknowledged is there.
 */
public final class DatabaseSlow {

    // more than the service has threads: none of them may be held by waiting
    private static final int ASKERS = 250;
    private static final Duration SLOW = Duration.ofMillis(100);
    // the wait for a connection (3 s) and for an answer on it (10 s), each with room for a busy machine
    private static final Duration REFUSED_WITHIN = Duration.ofSeconds(20);
    private static final Duration ESTIMATED_WITHIN = Duration.ofSeconds(5);
    private static final Duration BACK_WITHIN = Duration.ofSeconds(60);

    private final KeptClient client;
    private final AtomicBoolean stopped = new AtomicBoolean();
    private final AtomicInteger refused = new AtomicInteger();
    private final AtomicInteger answered = new AtomicInteger();
    private final AtomicLong longest = new AtomicLong();

    private DatabaseSlow(KeptClient client) {
        this.client = client;
    }

    /** @param args folder to work in, seconds of each fault, seed */
    public static void main(String[] args) throws Exception {
        Path work = Path.of(args[0]);
        Duration fault = Duration.ofSeconds(Long.parseLong(args[1]));
        long seed = Long.parseLong(args[2]);
        System.out.println("seed " + seed);
        try (PostgresServer server = new PostgresServer(work.resolve("postgres-data"));
                SlowRelay relay = new SlowRelay(server.port());
                Replicas service =
                        new Replicas(1, PostgresServer.settings(relay.port()), work.resolve("database-slow.log"));
                Writers writers = new Writers(4, seed, service)) {
            DatabaseSlow asked = new DatabaseSlow(new KeptClient(service));
            asked.awaitBack();
            System.out.println("as usual: " + asked.estimates(fault));
            relay.delay(SLOW);
            System.out.println("answers " + SLOW.toMillis() + " ms late each way: " + asked.estimates(fault));
            writers.check();
            relay.delay(Duration.ZERO);
            relay.stall();
            asked.whileStalled(fault.multipliedBy(2));
            writers.check();
            relay.goOn();
            long from = System.nanoTime();
            asked.awaitBack();
            System.out.println("kept again " + seconds(System.nanoTime() - from)
                    + " after the database answered again; " + writers.refused() + " writes were told to come back");
            writers.end().checkAllAndNothingElse(asked.client);
        }
    }

    private void whileStalled(Duration time) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(ASKERS);
        List<Future<?>> askers = new ArrayList<>();
        try {
            for (int i = 0; i < ASKERS; i++) {
                askers.add(threads.submit(() -> {
                    while (!stopped.get()) {
                        askKept();
                    }
                    return null;
                }));
            }
            // the pool's connections are all in use by now
            while (refused.get() < 1) {
                Thread.sleep(20);
            }
            System.out.println("no answers at all, " + ASKERS + " ask for what is kept: " + estimates(time));
            stopped.set(true);
            for (Future<?> asker : askers) {
                asker.get(1, TimeUnit.MINUTES);
            }
        } finally {
            threads.shutdownNow();
        }
        System.out.println("kept meanwhile: " + refused + " times 503 with Retry-After, the latest after "
                + seconds(longest.get()) + ", " + answered + " times answered");
        if (longest.get() > REFUSED_WITHIN.toNanos()) {
            throw new AssertionError("a refusal took longer than " + REFUSED_WITHIN);
        }
    }

    private void askKept() throws Exception {
        long from = System.nanoTime();
        HttpResponse<String> answer = client.get("/v1/quotes");
        if (answer.statusCode() == 200) {
            answered.incrementAndGet();
            return;
        }
        KeptBatchClient.refusedForNow(answer);
        refused.incrementAndGet();
        longest.accumulateAndGet(System.nanoTime() - from, Math::max);
        // a client that comes back sooner than it was told to, as many do
        Thread.sleep(50);
    }

    /** Estimates, one after the other; how long they took. */
    private String estimates(Duration time) throws Exception {
        List<Long> took = new ArrayList<>();
        long end = System.nanoTime() + time.toNanos();
        while (System.nanoTime() < end) {
            long from = System.nanoTime();
            HttpResponse<String> answer = client.estimate();
            if (answer.statusCode() != 200) {
                throw new AssertionError("an estimate: " + KeptClient.told(answer));
            }
            took.add(System.nanoTime() - from);
            Thread.sleep(5);
        }
        Collections.sort(took);
        long worst = took.get(took.size() - 1);
        if (worst > ESTIMATED_WITHIN.toNanos()) {
            throw new AssertionError("an estimate took " + seconds(worst));
        }
        return took.size() + " estimates, half within " + seconds(took.get(took.size() / 2)) + ", 99 % within "
                + seconds(took.get(took.size() * 99 / 100)) + ", all within " + seconds(worst);
    }

    private void awaitBack() throws Exception {
        long end = System.nanoTime() + BACK_WITHIN.toNanos();
        while (client.get("/v1/quotes").statusCode() != 200) {
            if (System.nanoTime() > end) {
                throw new AssertionError("what is kept was not to be had within " + BACK_WITHIN);
            }
            Thread.sleep(50);
        }
    }

    private static String seconds(long nanos) {
        return String.format(java.util.Locale.ROOT, "%.3f s", nanos / 1e9);
    }
}
