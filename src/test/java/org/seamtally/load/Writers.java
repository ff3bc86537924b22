package org.seamtally.load;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/** Several who write at the same time, while something happens to the service. */
final class Writers implements AutoCloseable {

    private final ExecutorService threads;
    private final List<KeptWriter> writers = new ArrayList<>();
    private final List<Future<Void>> ends = new ArrayList<>();
    private final Acknowledged acknowledged = new Acknowledged();

    /** Begins to write. */
    Writers(int count, long seed, Supplier<ServiceProcess> service) {
        threads = Executors.newFixedThreadPool(count);
        for (int i = 1; i <= count; i++) {
            KeptWriter writer = new KeptWriter(new KeptClient(service), acknowledged, "Writer " + i, seed);
            writers.add(writer);
            ends.add(threads.submit(writer));
        }
    }

    /** What is acknowledged, as they go on. */
    Acknowledged acknowledged() {
        return acknowledged;
    }

    /** Writes that a fault hit so far: their answers broke off. */
    int broken() {
        return writers.stream().mapToInt(KeptWriter::broken).sum();
    }

    /** Writes that were answered 503 so far. */
    int refused() {
        return writers.stream().mapToInt(KeptWriter::refused).sum();
    }

    /** Writes acknowledged so far. */
    int kept() {
        return writers.stream().mapToInt(KeptWriter::kept).sum();
    }

    /** Waits until so many more writes are acknowledged: the service is at work. */
    void awaitMore(int more) throws Exception {
        int enough = kept() + more;
        long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(3);
        while (kept() < enough) {
            check();
            if (System.nanoTime() > end) {
                throw new AssertionError("nothing is acknowledged any more, after " + kept() + " writes");
            }
            Thread.sleep(10);
        }
    }

    /** Fails where one of them has failed. */
    void check() throws Exception {
        for (Future<Void> end : ends) {
            if (end.isDone()) {
                end.get();
            }
        }
    }

    /** Lets them end what they have begun; what was acknowledged. */
    Acknowledged end() throws Exception {
        writers.forEach(KeptWriter::stop);
        for (Future<Void> end : ends) {
            end.get(3, TimeUnit.MINUTES);
        }
        return acknowledged;
    }

    @Override
    public void close() {
        threads.shutdownNow();
    }
}
