package org.seamtally.load;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongFunction;

/**
 * Sends at a steady rate whether answers come or not, and takes each latency from the moment at which the request was meant
 * to go: a server that stands still is not asked less. The load generators to be had from Debian send a request only when
 * the one before was answered, or do not tell each latency from that moment; hence this sender of our own.
 */
final class OpenLoop {

    private static final Duration GIVEN_UP_AFTER = Duration.ofSeconds(60);

    private OpenLoop() {}

    /**
     * An answer.
     *
     * @param status 0 where none came
     * @param millis from the moment at which the request was meant to go
     * @param dueSeconds that moment, from the first request on
     */
    record Answer(int status, double millis, double dueSeconds) {}

    /** A share of latencies is at most this, in milliseconds; NaN where there are none. */
    static double percentile(List<Answer> answers, double share) {
        double[] sorted = answers.stream().mapToDouble(Answer::millis).sorted().toArray();
        return sorted.length == 0
                ? Double.NaN
                : sorted[Math.min(sorted.length - 1, (int) Math.ceil(share * sorted.length) - 1)];
    }

    /**
     * Sends for some seconds, and waits for the last answer.
     *
     * @param rate requests a second
     * @param bodies the body of each request by its number, from 0
     */
    static List<Answer> run(URI uri, double rate, double seconds, LongFunction<byte[]> bodies)
            throws InterruptedException {
        int count = (int) Math.max(1, Math.round(rate * seconds));
        Queue<Answer> answers = new ConcurrentLinkedQueue<>();
        CountDownLatch open = new CountDownLatch(count);
        // what is taken from answers takes one thread: the generator has one core
        ExecutorService thread = Executors.newSingleThreadExecutor();
        try {
            HttpClient client = HttpClient.newBuilder()
                    .version(HttpClient.Version.HTTP_1_1)
                    .executor(thread)
                    .build();
            long start = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(50);
            for (int i = 0; i < count; i++) {
                HttpRequest request = HttpRequest.newBuilder(uri)
                        .timeout(GIVEN_UP_AFTER)
                        .header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofByteArray(bodies.apply(i)))
                        .build();
                long due = start + (long) (i / rate * 1e9);
                for (long left = due - System.nanoTime(); left > 0; left = due - System.nanoTime()) {
                    LockSupport.parkNanos(left);
                }
                client.sendAsync(request, HttpResponse.BodyHandlers.discarding())
                        .whenComplete((answer, failure) -> {
                            answers.add(new Answer(
                                    failure == null ? answer.statusCode() : 0,
                                    (System.nanoTime() - due) / 1e6,
                                    (due - start) / 1e9));
                            open.countDown();
                        });
            }
            if (!open.await(2 * GIVEN_UP_AFTER.toSeconds(), TimeUnit.SECONDS)) {
                throw new IllegalStateException(open.getCount() + " requests hang");
            }
            return List.copyOf(answers);
        } finally {
            thread.shutdownNow();
        }
    }
}
