package org.seamtally.load;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

    private boolean missed;

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new BatchMemory()).execute(args));
    }

    @Override
    public Integer call() throws Exception {
        System.out.printf(
                "%-34s %9s %9s %12s %12s %8s %8s%n",
                "way", "heap", "frames", "live at 10%", "live at 90%", "more", "s");
        for (Form form : Form.values()) {
            Path jobs = jobs(form);
            for (int workers = 1; workers <= 2; workers++) {
                shell(jobs, form, workers);
            }
            straightThrough(jobs, form);
            Files.delete(jobs);
        }
        System.out.println(missed ? "MISSED: more than 10 % more" : "as much at nine tenths as at one, within 10 %");
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
        try (RunningService service = RunningService.start(jar, "-Xmx64m", directory)) {
            Process sender = new ProcessBuilder(
                            "curl",
                            "--silent",
                            "--show-error",
                            "--request",
                            "POST",
                            "--upload-file",
                            "-",
                            "--header",
                            "Content-Type: " + (form == Form.CSV ? "text/csv" : "application/x-ndjson"),
                            "--header",
                            "Expect:",
                            "--output",
                            results.toString(),
                            "--fail-with-body",
                            service.url("/v1/frame-estimates"))
                    .redirectInput(jobs.toFile())
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            measure(
                    "straight through, " + form.name().toLowerCase(Locale.ROOT),
                    "64m",
                    service.process(),
                    sender,
                    results,
                    0);
        }
    }

    /** Waits for a tenth and for nine tenths of the results, and for the end of who fetches them. */
    private void measure(String way, String heap, Process measured, Process fetching, Path results, int refusedCode)
            throws Exception {
        long start = System.nanoTime();
        long early;
        long late;
        long all;
        waitFor(() -> Files.exists(results), fetching);
        try (ResultLines lines = new ResultLines(results)) {
            waitFor(() -> lines.soFar() >= frames / 10, fetching);
            early = LiveHeap.of(measured.pid());
            waitFor(() -> lines.soFar() >= frames - frames / 10, fetching);
            late = LiveHeap.of(measured.pid());
            int code = fetching.waitFor();
            if (code != refusedCode) {
                throw new IllegalStateException(way + ": ended with " + code);
            }
            all = lines.soFar();
        }
        String last = lastLine(results);
        if (all != frames + 1 || !last.contains("\"read\":" + frames + ",") || !last.contains("\"complete\":true")) {
            throw new IllegalStateException(way + ": " + all + " lines, the last one " + last);
        }
        Files.delete(results);
        double more = (double) late / early - 1;
        missed |= more > MOST_MORE;
        System.out.printf(
                Locale.ROOT,
                "%-34s %9s %9d %9.2f MB %9.2f MB %+6.1f %% %8.1f%n",
                way,
                heap,
                frames,
                early / 1e6,
                late / 1e6,
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
            var bytes = java.nio.ByteBuffer.allocate(tail);
            while (bytes.hasRemaining() && channel.read(bytes) >= 0) {}
            String[] lines = new String(bytes.array(), java.nio.charset.StandardCharsets.UTF_8).split("\n");
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
