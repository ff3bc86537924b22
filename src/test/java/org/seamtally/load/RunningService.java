package org.seamtally.load;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The packaged service in a process of its own, on a free port of this machine. */
final class RunningService implements AutoCloseable {

    private static final long PATIENCE_SECONDS = 60;

    private final Process process;
    private final int port;

    private RunningService(Process process, int port) {
        this.process = process;
        this.port = port;
    }

    /** Starts it, and waits until it is ready. Its output is {@code service.log} in the directory that it runs in. */
    static RunningService start(Path jar, String heap, Path directory) throws IOException, InterruptedException {
        return start(List.of(), jar, List.of(heap), directory);
    }

    /**
     * The same with more said.
     *
     * @param before what the command is given to, such as {@code taskset -c 0}
     * @param options of Java
     */
    static RunningService start(List<String> before, Path jar, List<String> options, Path directory)
            throws IOException, InterruptedException {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-Dquarkus.http.port=" + port, "-jar", jar.toString(), "serve"));
        Process process = new ProcessBuilder(command)
                .directory(directory.toFile())
                .redirectErrorStream(true)
                .redirectOutput(directory.resolve("service.log").toFile())
                .start();
        RunningService service = new RunningService(process, port);
        long start = System.nanoTime();
        while (!service.isReady()) {
            if (process.waitFor(50, TimeUnit.MILLISECONDS)
                    || TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start) > PATIENCE_SECONDS) {
                service.close();
                throw new IOException("the service did not start: see " + directory.resolve("service.log"));
            }
        }
        return service;
    }

    Process process() {
        return process;
    }

    String url(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    /** Processor time so far, of all threads, in seconds. */
    double cpuSeconds() {
        return process.info().totalCpuDuration().orElseThrow().toMillis() / 1e3;
    }

    /** Memory that it has of the machine now, in bytes. */
    long residentBytes() throws IOException {
        String line = Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
                .filter(found -> found.startsWith("VmRSS:"))
                .findFirst()
                .orElseThrow();
        return Long.parseLong(line.replaceAll("\\D", "")) * 1024;
    }

    private boolean isReady() throws IOException {
        HttpURLConnection asked =
                (HttpURLConnection) URI.create(url("/q/health/ready")).toURL().openConnection();
        try {
            return asked.getResponseCode() == 200;
        } catch (java.net.ConnectException e) {
            return false;
        } finally {
            asked.disconnect();
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
