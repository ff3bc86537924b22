package org.seamtally.load;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.Supplier;

/** The service in one or more processes on one database, each to be killed and started again; asks go to any of them. */
final class Replicas implements Supplier<ServiceProcess>, AutoCloseable {

    private final Map<String, String> settings;
    private final Path log;
    private final AtomicReferenceArray<ServiceProcess> processes;

    /** Starts them, one after the other, and waits until they answer. */
    Replicas(int count, Map<String, String> settings, Path log) throws IOException, InterruptedException {
        this.settings = settings;
        this.log = log;
        this.processes = new AtomicReferenceArray<>(count);
        for (int i = 0; i < count; i++) {
            start(i);
        }
    }

    void start(int replica) throws IOException, InterruptedException {
        ServiceProcess process = ServiceProcess.start(List.of("-Xmx256m"), settings, log);
        processes.set(replica, process);
        process.awaitReady();
    }

    /** SIGKILL; it stays down. */
    void kill(int replica) throws InterruptedException {
        processes.get(replica).kill();
    }

    ServiceProcess replica(int replica) {
        return processes.get(replica);
    }

    /** Any of them, down or not: which one does not matter to what must hold. */
    @Override
    public ServiceProcess get() {
        return processes.get(ThreadLocalRandom.current().nextInt(processes.length()));
    }

    @Override
    public void close() {
        List<ServiceProcess> all = new ArrayList<>();
        for (int i = 0; i < processes.length(); i++) {
            all.add(processes.get(i));
        }
        all.stream().filter(java.util.Objects::nonNull).forEach(ServiceProcess::close);
    }
}
