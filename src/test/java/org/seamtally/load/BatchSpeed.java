package org.seamtally.load;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.seamtally.batch.Form;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * What a batch takes beside what it cannot do without, all in one run on one machine: {@code load-tests/batch-speed}. Each
 * figure is the median of several processes, taken in turn, so that a busy minute falls on all of them.
 */
@Command(name = "batch-speed", mixinStandardHelpOptions = true)
public final class BatchSpeed implements Callable<Integer> {

    private static final double MOST_CPU = 1.3;
    private static final double MOST_WALL = 0.65;

    @Option(names = "--launcher", required = true, description = "The program's launcher.")
    private Path launcher;

    @Option(names = "--test-class", required = true, description = "What runs a class of the tests.")
    private Path testClass;

    @Option(names = "--directory", required = true, description = "Where files are written, and taken away again.")
    private Path directory;

    @Option(names = "--frames", required = true, description = "Frames of the job file.")
    private long frames;

    @Option(names = "--times", defaultValue = "5", description = "Processes of each sort.")
    private int times;

    /** What a process took, in seconds. */
    private record Took(double wall, double cpu) {}

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new BatchSpeed()).execute(args));
    }

    @Override
    public Integer call() throws Exception {
        Path jobs = directory.resolve("jobs.ndjson");
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(jobs))) {
            JobFile.write(out, Form.NDJSON, frames, new FrameMaker(1, FrameMaker.USUAL_JOINTS, 0));
        }
        // whatever there is to compile is compiled before the clock runs
        bare(jobs);
        List<Took> bare = new ArrayList<>();
        List<Took> one = new ArrayList<>();
        List<Took> two = new ArrayList<>();
        List<Took> kept = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            bare.add(bare(jobs));
            one.add(batch(jobs, 1));
            two.add(batch(jobs, 2));
            kept.add(kept(jobs));
        }
        System.out.printf("%d frames of %d joints, medians of %d%n", frames, FrameMaker.USUAL_JOINTS, times);
        System.out.printf("%-52s %10s %10s%n", "", "CPU s", "wall s");
        print("bare loop over parsed frames + file parsed, rewritten", bare);
        print("batch, one worker", one);
        print("batch, two workers", two);
        print("kept batch, as many workers as processors", kept);
        double cpu = Median.of(one, Took::cpu) / Median.of(bare, Took::cpu);
        double wall = Median.of(two, Took::wall) / Median.of(one, Took::wall);
        System.out.printf(Locale.ROOT, "CPU, one worker to bare: %.2f (at most %.2f)%n", cpu, MOST_CPU);
        System.out.printf(Locale.ROOT, "wall, two workers to one: %.2f (at most %.2f)%n", wall, MOST_WALL);
        return cpu <= MOST_CPU && wall <= MOST_WALL ? 0 : 1;
    }

    private static void print(String what, List<Took> took) {
        System.out.printf(
                Locale.ROOT, "%-52s %10.2f %10.2f%n", what, Median.of(took, Took::cpu), Median.of(took, Took::wall));
    }

    private Took batch(Path jobs, int workers) throws Exception {
        Path results = directory.resolve("results");
        Took took = timed(launcher, "batch", jobs, "--out", results, "--workers", workers);
        Files.delete(results);
        return took;
    }

    /** The service from the upload to the last result fetched, its start left out. */
    private Took kept(Path jobs) throws Exception {
        Path log = directory.resolve("service.log");
        String database = "jdbc:h2:file:" + directory.resolve("kept-" + System.nanoTime());
        try (ServiceProcess service = ServiceProcess.start(List.of(), Map.of("seamtally.database.url", database), log)
                .awaitReady()) {
            KeptBatchClient client = new KeptBatchClient(() -> service);
            double before = service.cpuSeconds();
            long start = System.nanoTime();
            String batch = client.send(jobs, "speed");
            client.awaitDone(batch);
            client.results(batch, directory.resolve("kept"));
            return new Took((System.nanoTime() - start) / 1e9, service.cpuSeconds() - before);
        }
    }

    private Took bare(Path jobs) throws Exception {
        Path again = directory.resolve("again");
        Took took = timed(testClass, "org.seamtally.wire.BareLoop", jobs, again);
        if (Files.mismatch(jobs, again) >= 0) {
            throw new IllegalStateException("the file was not written again as it was");
        }
        Files.delete(again);
        String[] said = Files.readString(directory.resolve("said")).strip().split("\n");
        double beforehand = Long.parseLong(said[said.length - 1]) / 1e9;
        return new Took(took.wall() - beforehand, took.cpu() - beforehand);
    }

    /** The shell's own clock: the process from its start to its end, with all its threads. */
    private Took timed(Object... words) throws IOException, InterruptedException {
        Path times = directory.resolve("times");
        List<String> command = new ArrayList<>(List.of(
                "bash",
                "-c",
                "TIMEFORMAT='%R %U %S'; { time \"$@\" >\"$0/said\" 2>\"$0/errors\"; } 2>\"$0/times\"",
                directory.toString()));
        Arrays.stream(words).map(Object::toString).forEach(command::add);
        if (new ProcessBuilder(command).inheritIO().start().waitFor() != 0) {
            throw new IOException(Files.readString(directory.resolve("errors"), StandardCharsets.UTF_8));
        }
        String[] seconds = Files.readString(times).strip().split(" ");
        return new Took(
                Double.parseDouble(seconds[0]), Double.parseDouble(seconds[1]) + Double.parseDouble(seconds[2]));
    }
}
