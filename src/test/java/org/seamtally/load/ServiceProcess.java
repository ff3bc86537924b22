package org.seamtally.load;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The packaged service as a process of its own, on a free port: to be killed. */
final class ServiceProcess implements AutoCloseable {

    private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
    // seconds as a rule; on a machine that builds and tests besides, minutes
    private static final Duration READY_WITHIN = Duration.ofMinutes(4);

    static final HttpClient HTTP = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    private final Process process;
    private final int port;
    private final Path log;

    private ServiceProcess(Process process, int port, Path log) {
        this.process = process;
        this.port = port;
        this.log = log;
    }

    /**
     * Starts the service; {@link #awaitReady} says when it answers.
     *
     * @param jvm options of the virtual machine
     * @param settings of the service, as system properties
     * @param log where its output goes, appended
     */
    static ServiceProcess start(List<String> jvm, Map<String, String> settings, Path log) throws IOException {
        return start(jvm, settings, Map.of(), log);
    }

    /**
     * Any packaged program of this sort, not only the one that the build made.
     *
     * @param before what the command is given to, such as {@code taskset -c 0}
     */
    static ServiceProcess start(List<String> before, Path jar, List<String> jvm, Map<String, String> settings, Path log)
            throws IOException {
        return start(before, jar, jvm, settings, Map.of(), log);
    }

    /** The same in an environment with further variables. */
    static ServiceProcess start(
            List<String> jvm, Map<String, String> settings, Map<String, String> environment, Path log)
            throws IOException {
        return start(List.of(), JAR, jvm, settings, environment, log);
    }

    private static ServiceProcess start(
            List<String> before,
            Path jar,
            List<String> jvm,
            Map<String, String> settings,
            Map<String, String> environment,
            Path log)
            throws IOException {
        if (!Files.exists(jar)) {
            throw new IllegalStateException("there is no " + jar + ": mvn package builds it");
        }
        int port = freePort();
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(jvm);
        command.add("-Dquarkus.http.port=" + port);
        settings.forEach((name, value) -> command.add("-D" + name + "=" + value));
        command.addAll(List.of("-jar", jar.toString(), "serve"));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().putAll(environment);
        Process process = builder.start();
        return new ServiceProcess(process, port, log);
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** Waits until it takes estimates. */
    ServiceProcess awaitReady() throws InterruptedException {
        long end = System.nanoTime() + READY_WITHIN.toNanos();
        while (System.nanoTime() < end) {
            if (!process.isAlive()) {
                throw new IllegalStateException("the service ended with " + process.exitValue() + ": see " + log);
            }
            try {
                HttpRequest ready = HttpRequest.newBuilder(uri("/q/health/ready"))
                        .timeout(Duration.ofSeconds(5))
                        .build();
                if (HTTP.send(ready, HttpResponse.BodyHandlers.discarding()).statusCode() == 200) {
                    return this;
                }
            } catch (IOException e) {
                // not yet listening
            }
            Thread.sleep(50);
        }
        throw new IllegalStateException("the service was not ready within " + READY_WITHIN + ": see " + log);
    }

    URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    String url(String path) {
        return uri(path).toString();
    }

    Process process() {
        return process;
    }

    long pid() {
        return process.pid();
    }

    int port() {
        return port;
    }

    /** Most memory that it has held, bytes. */
    long mostMemory() throws IOException {
        return memory("VmHWM:");
    }

    /** Memory that it has of the machine now, bytes. */
    long residentMemory() throws IOException {
        return memory("VmRSS:");
    }

    private long memory(String which) throws IOException {
        try (java.util.stream.Stream<String> lines = Files.lines(Path.of("/proc", Long.toString(pid()), "status"))) {
            return lines.filter(line -> line.startsWith(which))
                    .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")) << 10)
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** Sockets that it holds. */
    long sockets() throws IOException {
        long sockets = 0;
        try (java.nio.file.DirectoryStream<Path> open =
                Files.newDirectoryStream(Path.of("/proc", Long.toString(pid()), "fd"))) {
            for (Path descriptor : open) {
                if (Files.isSymbolicLink(descriptor) && isSocket(descriptor)) {
                    sockets++;
                }
            }
        }
        return sockets;
    }

    private static boolean isSocket(Path descriptor) throws IOException {
        try {
            return Files.readSymbolicLink(descriptor).toString().startsWith("socket:");
        } catch (java.nio.file.NoSuchFileException e) {
            // closed since it was listed
            return false;
        }
    }

    /** Processor time so far, all threads. */
    double cpuSeconds() {
        return process.info().totalCpuDuration().orElseThrow().toMillis() / 1e3;
    }

    /** SIGTERM: it ends what it has begun, and then itself. */
    void terminate() {
        process.destroy();
    }

    /** Whether it has ended within a time. */
    boolean awaitEnd(Duration within) throws InterruptedException {
        return process.waitFor(within.toMillis(), java.util.concurrent.TimeUnit.MILLISECONDS);
    }

    /** SIGKILL: nothing is written, closed or said any more. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(20, java.util.concurrent.TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
