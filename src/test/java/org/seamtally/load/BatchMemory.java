package org.seamtally.load;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.seamtally.batch.Form;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * Whether a long job file is worked through in little memory: {@code load-tests/batch-memory}. Each way through is a process
 * of its own, with a heap that is small against the file; what lives in it at a tenth of the file and at nine tenths is
 * printed, and must be alike.
 */
@Command(name = "batch-memory", mixinStandardHelpOptions = true)
public final class BatchMemory implements Callable<Integer> {

    private static final JsonMapper JSON = new JsonMapper();

    // what nine tenths of the file may live in more than one tenth
    private static final double MOST_MORE = 0.10;
    // a process that shows no line for so long is stuck
    private static final long PATIENCE_SECONDS = 300;

    @Option(names = "--jar", required = true, description = "The packaged program.")
    private Path jar;

    @Option(names = "--directory", required = true, description = "Where files are written, and taken away again.")
    private Path directory;

    @Option(names = "--frames", required = true, description = "Frames of the job file.")
    private long frames;

    @Option(names = "--late", defaultValue = "90", description = "Where it is looked at again, in % of the file.")
    private int late;

    @Option(names = "--ways", split = ",", description = "Of ${COMPLETION-CANDIDATES}; all unless said.")
    private Set<Way> ways = EnumSet.allOf(Way.class);

    private boolean missed;

    /** How a file gets to the engine. */
    enum Way {
        SHELL,
        STRAIGHT,
        KEPT
    }

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new BatchMemory())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .execute(args));
    }

    @Override
    public Integer call() throws Exception {
        System.out.printf(
                "%-34s %9s %9s %12s %12s %8s %8s%n",
                "way", "heap", "frames", "live at 10%", "live at " + late + "%", "more", "s");
        for (Form form : Form.values()) {
            Path jobs = jobs(form);
            for (int workers = 1; ways.contains(Way.SHELL) && workers <= 2; workers++) {
                shell(jobs, form, workers);
            }
            if (ways.contains(Way.STRAIGHT)) {
                straightThrough(jobs, form);
            }
            if (ways.contains(Way.KEPT)) {
                kept(jobs, form);
            }
            Files.delete(jobs);
        }
        System.out.println(
                missed ? "MISSED: more than 10 % more" : "as much late in the file as at a tenth, within 10 %");
        return missed ? 1 : 0;
    }

    private Path jobs(Form form) throws IOException {
        Path jobs = directory.resolve("jobs." + form.name().toLowerCase(Locale.ROOT));
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(jobs))) {
            // a joint a frame, so that a great many frames pass in minutes
            JobFile.write(out, form, frames, new FrameMaker(1, 1, 0.01));
        }
        return jobs;
    }

    private void shell(Path jobs, Form form, int workers) throws Exception {
        Path results = directory.resolve("results");
        Process process = java("-Xmx64m", "batch", jobs, "--out", results, "--workers", workers);
        measure(
                "shell, " + form.name().toLowerCase(Locale.ROOT) + ", workers " + workers,
                "64m",
                process,
                process,
                results,
                1);
    }

    private void straightThrough(Path jobs, Form form) throws Exception {
        Path results = directory.resolve("results");
        try (ServiceProcess service = started("-Xmx64m")) {
            Process sender = CurlUpload.send(jobs, form, service.url("/v1/frame-estimates"), results);
            measure(
                    "straight through, " + form.name().toLowerCase(Locale.ROOT),
                    "64m",
                    service.process(),
                    sender,
                    results,
                    0);
        }
    }

    /** The upload ends before the work does: what lives is asked for at a tenth and at nine tenths of the work. */
    private void kept(Path jobs, Form form) throws Exception {
        Path answer = directory.resolve("answer");
        long start = System.nanoTime();
        try (ServiceProcess service = started("-Xmx256m")) {
            int code = CurlUpload.send(jobs, form, service.url("/v1/batches"), answer)
                    .waitFor();
            if (code != 0) {
                throw new IllegalStateException("kept: the upload ended with " + code);
            }
            String batch = service.url(
                    "/v1/batches/" + JSON.readTree(answer.toFile()).path("id").textValue());
            Process process = service.process();
            waitFor(() -> read(batch) >= frames / 10, process);
            long early = LiveHeap.of(process.pid());
            waitFor(() -> read(batch) >= frames * late / 100, process);
            long nearEnd = LiveHeap.of(process.pid());
            waitFor(() -> read(batch) == frames, process);
            Path results = directory.resolve("results");
            try (InputStream in = URI.create(batch + "/results").toURL().openStream()) {
                Files.copy(in, results);
            }
            whole("kept", results);
            Files.delete(results);
            row("kept, " + form.name().toLowerCase(Locale.ROOT), "256m", early, nearEnd, start);
        }
    }

    private ServiceProcess started(String heap) throws IOException, InterruptedException {
        Map<String, String> kept = Map.of("seamtally.database.url", "jdbc:h2:file:" + directory.resolve("kept"));
        return ServiceProcess.start(List.of(), jar, List.of(heap), kept, directory.resolve("service.log"))
                .awaitReady();
    }

    private static long read(String batch) throws IOException {
        return JSON.readTree(URI.create(batch).toURL())
                .path("counts")
                .path("read")
                .longValue();
    }

    /** Waits for a tenth and for nine tenths of the results, and for the end of who fetches them. */
    private void measure(String way, String heap, Process measured, Process fetching, Path results, int refusedCode)
            throws Exception {
        long start = System.nanoTime();
        long early;
        long nearEnd;
        waitFor(() -> Files.exists(results), fetching);
        try (ResultLines lines = new ResultLines(results)) {
            waitFor(() -> lines.soFar() >= frames / 10, fetching);
            early = LiveHeap.of(measured.pid());
            waitFor(() -> lines.soFar() >= frames * late / 100, fetching);
            nearEnd = LiveHeap.of(measured.pid());
            int code = fetching.waitFor();
            if (code != refusedCode) {
                throw new IllegalStateException(way + ": ended with " + code);
            }
        }
        whole(way, results);
        Files.delete(results);
        row(way, heap, early, nearEnd, start);
    }

    private void whole(String way, Path results) throws IOException {
        long all;
        try (ResultLines lines = new ResultLines(results)) {
            all = lines.soFar();
        }
        String last = lastLine(results);
        if (all != frames + 1 || !last.contains("\"read\":" + frames + ",") || !last.contains("\"complete\":true")) {
            throw new IllegalStateException(way + ": " + all + " lines, the last one " + last);
        }
    }

    private void row(String way, String heap, long early, long nearEnd, long start) {
        double more = (double) nearEnd / early - 1;
        missed |= more > MOST_MORE;
        System.out.printf(
                Locale.ROOT,
                "%-34s %9s %9d %9.2f MB %9.2f MB %+6.1f %% %8.1f%n",
                way,
                heap,
                frames,
                early / 1e6,
                nearEnd / 1e6,
                100 * more,
                (System.nanoTime() - start) / 1e9);
    }

    private interface Condition {
        boolean holds() throws IOException;
    }

    private static void waitFor(Condition condition, Process process) throws Exception {
        long start = System.nanoTime();
        while (!condition.holds()) {
            if (process.waitFor(5, TimeUnit.MILLISECONDS) && !condition.holds()) {
                throw new IllegalStateException(
                        "it ended too early to be measured, with " + process.exitValue() + ": take more frames");
            }
            if (TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start) > PATIENCE_SECONDS) {
                process.destroyForcibly();
                throw new IllegalStateException("nothing moves");
            }
        }
    }

    private static String lastLine(Path file) throws IOException {
        try (var channel = Files.newByteChannel(file)) {
            // a trailer is shorter
            int tail = (int) Math.min(channel.size(), 300);
            channel.position(channel.size() - tail);
            var bytes = ByteBuffer.allocate(tail);
            while (bytes.hasRemaining() && channel.read(bytes) >= 0) {}
            String[] lines = new String(bytes.array(), StandardCharsets.UTF_8).split("\n");
            return lines[lines.length - 1];
        }
    }

    private Process java(Object... words) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add(words[0].toString());
        command.add("-XX:+UseSerialGC");
        command.add("-jar");
        command.add(jar.toString());
        for (Object word : List.of(words).subList(1, words.length)) {
            command.add(word.toString());
        }
        return new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
