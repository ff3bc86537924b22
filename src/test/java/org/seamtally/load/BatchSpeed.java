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
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seamtally.batch.Form;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * What a batch takes beside what it cannot do without, all in one run on one machine: {@code load-tests/batch-speed}.
 * Programs run in turn, and each ratio is the median of the turns': a machine that changes its speed does so for all of a turn.
 */
@Command(name = "batch-speed", mixinStandardHelpOptions = true)
public final class BatchSpeed implements Callable<Integer> {

    private static final double MOST_CPU = 1.3;
    private static final double MOST_WALL = 0.65;

    @Option(names = "--launcher", required = true, description = "The program's launcher.")
    private Path launcher;

    @Option(names = "--test-class", required = true, description = "What runs a class of the tests.")
    private Path testClass;

    @Option(
            names = "--compiler",
            required = true,
            description =
                    "The launcher's options for Java's compiler: the bare loop is run without them and with them.")
    private String compiler;

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
        Path jobs = jobs("jobs.ndjson", frames);
        // whatever there is to build is built before the clock runs
        bare(jobs("few.ndjson", 1), "");
        List<Took> bare = new ArrayList<>();
        List<Took> alike = new ArrayList<>();
        List<Took> one = new ArrayList<>();
        List<Took> two = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            bare.add(bare(jobs, ""));
            alike.add(bare(jobs, compiler));
            one.add(batch(jobs, 1));
            two.add(batch(jobs, 2));
        }
        // held against nothing: once
        List<Took> kept = List.of(kept(jobs));
        System.out.printf(
                "%d frames of %d joints, medians of %d, the kept batch once%n", frames, FrameMaker.USUAL_JOINTS, times);
        System.out.printf("%-52s %10s %10s%n", "", "CPU s", "wall s");
        print("bare loop over parsed frames + file parsed, rewritten", bare);
        print("the same, Java's compiler as the launcher has it", alike);
        print("batch, one worker", one);
        print("batch, two workers", two);
        print("kept batch, as many workers as processors", kept);
        double cpu = ratio("CPU, one worker to bare", one, bare, Took::cpu, most(MOST_CPU));
        // told, and held against nothing: how the compiler is set is the launcher's work, and the bare loop has none
        ratio("CPU, one worker to bare, Java's compiler as the launcher has it", one, alike, Took::cpu, "");
        double wall = ratio("wall, two workers to one", two, one, Took::wall, most(MOST_WALL));
        return cpu <= MOST_CPU && wall <= MOST_WALL ? 0 : 1;
    }

    private static String most(double goal) {
        return String.format(Locale.ROOT, " (at most %.2f)", goal);
    }

    private static double ratio(String what, List<Took> of, List<Took> to, ToDoubleFunction<Took> figure, String most) {
        double[] turns = IntStream.range(0, of.size())
                .mapToDouble(i -> figure.applyAsDouble(of.get(i)) / figure.applyAsDouble(to.get(i)))
                .toArray();
        double median = Median.of(turns);
        System.out.printf(
                Locale.ROOT,
                "%s: %.2f%s, turn by turn %s%n",
                what,
                median,
                most,
                Arrays.stream(turns)
                        .mapToObj(turn -> String.format(Locale.ROOT, "%.2f", turn))
                        .collect(Collectors.joining(", ")));
        return median;
    }

    private Path jobs(String name, long count) throws IOException {
        Path file = directory.resolve(name);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            JobFile.write(out, Form.NDJSON, count, new FrameMaker(1, FrameMaker.USUAL_JOINTS, 0));
        }
        return file;
    }

    private static void print(String what, List<Took> took) {
        System.out.printf(
                Locale.ROOT, "%-52s %10.2f %10.2f%n", what, Median.of(took, Took::cpu), Median.of(took, Took::wall));
    }

    private Took batch(Path jobs, int workers) throws Exception {
        Path results = directory.resolve("results");
        Took took = timed("", launcher, "batch", jobs, "--out", results, "--workers", workers);
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

    private Took bare(Path jobs, String options) throws Exception {
        Path again = directory.resolve("again");
        Took took = timed(options, testClass, "org.seamtally.wire.BareLoop", jobs, again);
        if (Files.mismatch(jobs, again) >= 0) {
            throw new IllegalStateException("the file was not written again as it was");
        }
        Files.delete(again);
        String[] said = Files.readString(directory.resolve("said")).strip().split("\n");
        double beforehand = Long.parseLong(said[said.length - 1]) / 1e9;
        return new Took(took.wall() - beforehand, took.cpu() - beforehand);
    }

    /**
     * The shell's own clock: the process from its start to its end, with all its threads.
     *
     * @param options for Java where a class of the tests is run, besides those that are set
     */
    private Took timed(String options, Object... words) throws IOException, InterruptedException {
        Path times = directory.resolve("times");
        List<String> command = new ArrayList<>(List.of(
                "bash",
                "-c",
                "TIMEFORMAT='%R %U %S'; { time \"$@\" >\"$0/said\" 2>\"$0/errors\"; } 2>\"$0/times\"",
                directory.toString()));
        Arrays.stream(words).map(Object::toString).forEach(command::add);
        ProcessBuilder process = new ProcessBuilder(command).inheritIO();
        process.environment().merge("TEST_JAVA_OPTIONS", options, (set, more) -> set + " " + more);
        if (process.start().waitFor() != 0) {
            throw new IOException(Files.readString(directory.resolve("errors"), StandardCharsets.UTF_8));
        }
        String[] seconds = Files.readString(times).strip().split(" ");
        return new Took(
                Double.parseDouble(seconds[0]), Double.parseDouble(seconds[1]) + Double.parseDouble(seconds[2]));
    }
}
