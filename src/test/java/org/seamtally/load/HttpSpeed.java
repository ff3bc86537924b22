package org.seamtally.load;

import java.io.BufferedWriter;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.seamtally.batch.Form;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * The service under load beside a service that reads and checks the same requests and answers with what it has stored:
 * {@code load-tests/http-speed}. Each server on one core, the generator on the other; the two take turns, so that a busy
 * minute falls on both. Prints one table, and the ratios with their goals.
 */
@Command(name = "http-speed", mixinStandardHelpOptions = true)
public final class HttpSpeed implements Callable<Integer> {

    // they keep one processor at work; of a fourth the largest bodies would not fit into the service's waiting line
    private static final int SENDERS = 3;

    /** A cold service takes its time over the first estimates of so few senders. */
    private static final String NOTHING_SHED = "30S";

    @Option(names = "--jar", required = true, description = "The packaged program.")
    private Path jar;

    @Option(names = "--echo-jar", required = true, description = "The same with the echo endpoints.")
    private Path echoJar;

    @Option(names = "--script", required = true, description = "The load generator's script.")
    private Path script;

    @Option(names = "--directory", required = true, description = "Where bodies and logs are written.")
    private Path directory;

    // on one processor the compiler is at work for more than a minute, after 20 s with two fifths of it
    @Option(names = "--warm-up", defaultValue = "90", description = "Seconds of each server before the first round.")
    private int warmUp;

    @Option(names = "--seconds", defaultValue = "5", description = "Seconds of a round.")
    private int seconds;

    @Option(names = "--rounds", defaultValue = "5", description = "Rounds of each server.")
    private int rounds;

    @Option(names = "--only", description = "Only these rows: ${COMPLETION-CANDIDATES}.")
    private List<Asked> only = List.of(Asked.values());

    private final List<String> told = new ArrayList<>();
    private boolean missed;

    /** What is asked for. */
    private enum Asked {
        ONE("estimate, 1 joint", "/v1/frame-estimates", "/echo/frame-estimates", 40_000, 1, false),
        TWENTY("estimate, 20 joints", "/v1/frame-estimates", "/echo/frame-estimates", 12_000, 20, false),
        TWENTY_NEW(
                "estimate, 20 joints, new set-ups", "/v1/frame-estimates", "/echo/frame-estimates", 12_000, 20, true),
        MANY("estimate, 150 joints", "/v1/frame-estimates", "/echo/frame-estimates", 2_000, 150, false),
        COMPARISON(
                "comparison, 3 set-ups", "/v1/gas-setup-comparisons", "/echo/gas-setup-comparisons", 20_000, 0, true);

        private final String words;
        private final String path;
        private final String echoPath;
        private final int bodies;
        private final int joints;
        private final boolean newSetUps;

        Asked(String words, String path, String echoPath, int bodies, int joints, boolean newSetUps) {
            this.words = words;
            this.path = path;
            this.echoPath = echoPath;
            this.bodies = bodies;
            this.joints = joints;
            this.newSetUps = newSetUps;
        }

        String body(LoadBodies made) {
            return joints == 0 ? made.comparison() : made.frame(joints);
        }
    }

    /** The service, or its echo. */
    private record Side(ServiceProcess service, boolean echo) {

        String path(Asked asked) {
            return echo ? asked.echoPath : asked.path;
        }
    }

    /** What one side did with one kind of request. */
    private record Measured(double rate, double cpuMillis, double p50, double p95, double p99, double tail) {}

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new HttpSpeed()).execute(args));
    }

    @Override
    public Integer call() throws Exception {
        Map<Asked, Path> files = new EnumMap<>(Asked.class);
        for (Asked asked : Asked.values()) {
            if (asked == Asked.TWENTY || only.contains(asked)) {
                files.put(asked, bodies(asked));
            }
        }
        try (ServiceProcess one = ClosedLoop.served(jar, directory, "service", NOTHING_SHED);
                ServiceProcess two = ClosedLoop.served(echoJar, directory, "echo", NOTHING_SHED)) {
            List<Side> sides = List.of(new Side(one, false), new Side(two, true));
            System.out.printf(Locale.ROOT, "idle: %.0f MB of the machine's memory%n", one.residentMemory() / 1e6);
            for (Side side : sides) {
                ClosedLoop.warmUp(
                        side.service, side.path(Asked.TWENTY), script, files.get(Asked.TWENTY), SENDERS, warmUp);
            }
            System.out.println("| what | requests/s | CPU ms | p50 ms | p95 ms | p99 ms | echo: requests/s | CPU ms |"
                    + " p50 ms | p95 ms | p99 ms | CPU to echo |");
            System.out.println("|---|---|---|---|---|---|---|---|---|---|---|---|");
            for (Asked asked : only) {
                row(asked, sides, files.get(asked));
            }
            if (only.size() == Asked.values().length) {
                stream(sides);
            }
            System.out.printf(Locale.ROOT, "under load: %.0f MB of the machine's memory%n", one.residentMemory() / 1e6);
        }
        System.out.println();
        told.forEach(System.out::println);
        return missed ? 1 : 0;
    }

    private Path bodies(Asked asked) throws IOException {
        Path file = directory.resolve(asked.name().toLowerCase(Locale.ROOT) + ".ndjson");
        LoadBodies made = new LoadBodies(asked.ordinal() + 1, asked.newSetUps);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < asked.bodies; i++) {
                out.write(asked.body(made));
                out.write('\n');
            }
        }
        return file;
    }

    private void row(Asked asked, List<Side> sides, Path file) throws Exception {
        List<List<ClosedLoop.Round>> closed = List.of(new ArrayList<>(), new ArrayList<>());
        long from = asked.bodies / 3;
        // the first round of each is not counted: what is new in these requests is compiled then
        for (int round = 0; round <= rounds; round++) {
            for (int side = 0; side < 2; side++) {
                Side of = sides.get(side);
                ClosedLoop.Round done = ClosedLoop.run(
                        of.service, of.path(asked), script, file, from, SENDERS, round == 0 ? 2 * seconds : seconds);
                if (side == 0) {
                    from += done.requests();
                }
                if (round > 0) {
                    closed.get(side).add(done);
                }
            }
        }
        List<Measured> measured = new ArrayList<>();
        List<List<List<OpenLoop.Answer>>> open = List.of(new ArrayList<>(), new ArrayList<>());
        List<byte[]> lines = Files.readAllLines(file).stream()
                .map(line -> line.getBytes(StandardCharsets.UTF_8))
                .toList();
        for (int round = 0; round < rounds; round++) {
            for (int side = 0; side < 2; side++) {
                long begin = from;
                double rate = Median.of(closed.get(side), ClosedLoop.Round::rate) / 2;
                List<OpenLoop.Answer> answers = OpenLoop.run(
                        URI.create(sides.get(side).service.url(sides.get(side).path(asked))),
                        rate,
                        seconds,
                        i -> lines.get((int) ((begin + i) % lines.size())));
                open.get(side).add(counted(asked, answers));
                if (side == 0) {
                    from += answers.size();
                }
            }
        }
        for (int side = 0; side < 2; side++) {
            List<List<OpenLoop.Answer>> answers = open.get(side);
            measured.add(new Measured(
                    Median.of(closed.get(side), ClosedLoop.Round::rate),
                    Median.of(closed.get(side), ClosedLoop.Round::cpuMillis),
                    Median.of(answers, of -> OpenLoop.percentile(of, 0.50)),
                    Median.of(answers, of -> OpenLoop.percentile(of, 0.95)),
                    Median.of(answers, of -> OpenLoop.percentile(of, 0.99)),
                    Median.of(answers, of -> OpenLoop.percentile(of, 0.99) / OpenLoop.percentile(of, 0.50))));
        }
        Measured one = measured.get(0);
        Measured two = measured.get(1);
        double cpu = one.cpuMillis / two.cpuMillis;
        System.out.printf(
                Locale.ROOT,
                "| %s | %.0f | %.2f | %.1f | %.1f | %.1f | %.0f | %.2f | %.1f | %.1f | %.1f | %.2f |%n",
                asked.words,
                one.rate,
                one.cpuMillis,
                one.p50,
                one.p95,
                one.p99,
                two.rate,
                two.cpuMillis,
                two.p50,
                two.p95,
                two.p99,
                cpu);
        switch (asked) {
            case TWENTY -> {
                ratio("CPU of a 20-joint estimate to echo", cpu, 4);
                ratio("p99/p50 at half of capacity to echo's", one.tail / two.tail, 1.5);
            }
            case TWENTY_NEW -> ratio("CPU of a 20-joint estimate with new set-ups to echo", cpu, 8);
            default -> {}
        }
    }

    /**
     * A request that was not answered with 200 counts as one that never was: where the machine stood still in one round the
     * median of all does without it, and where it is no half of capacity the ratio is infinite.
     */
    private static List<OpenLoop.Answer> counted(Asked asked, List<OpenLoop.Answer> answers) {
        long others = answers.stream().filter(answer -> answer.status() != 200).count();
        if (others == 0) {
            return answers;
        }
        System.err.println(
                asked.words + ": " + others + " of " + answers.size() + " requests were not answered with 200");
        return answers.stream()
                .map(answer -> answer.status() == 200
                        ? answer
                        : new OpenLoop.Answer(answer.status(), Double.POSITIVE_INFINITY, answer.dueSeconds()))
                .toList();
    }

    /** A job file through each side: processor time a frame. */
    private void stream(List<Side> sides) throws IOException, InterruptedException {
        int frames = 400 * seconds;
        LoadBodies made = new LoadBodies(99, false);
        Path file = directory.resolve("stream.ndjson");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < frames; i++) {
                out.write(made.frame(20));
                out.write('\n');
            }
        }
        double[] cpu = new double[2];
        double[] rate = new double[2];
        for (int side = 0; side < 2; side++) {
            ServiceProcess service = sides.get(side).service;
            String path = sides.get(side).echo ? "/echo/streams" : "/v1/frame-estimates";
            double before = service.cpuSeconds();
            long start = System.nanoTime();
            Path answer = directory.resolve("stream.answer");
            int code = CurlUpload.send(file, Form.NDJSON, service.url(path), answer)
                    .waitFor();
            long answered;
            try (Stream<String> lines = Files.lines(answer)) {
                answered = lines.filter(line -> line.contains("\"estimate\"")).count();
            }
            if (code != 0 || answered != frames) {
                throw new IOException("stream: " + answered + " of " + frames + " frames were answered");
            }
            cpu[side] = 1e3 * (service.cpuSeconds() - before) / frames;
            rate[side] = frames / ((System.nanoTime() - start) / 1e9);
        }
        System.out.printf(
                Locale.ROOT,
                "| stream, frames of 20 joints | %.0f | %.2f | | | | %.0f | %.2f | | | | %.2f |%n",
                rate[0],
                cpu[0],
                rate[1],
                cpu[1],
                cpu[0] / cpu[1]);
    }

    private void ratio(String what, double value, double goal) {
        missed |= value > goal;
        told.add(String.format(
                Locale.ROOT, "%s: %.2f (at most %.2f)%s", what, value, goal, value > goal ? ", MISSED" : ""));
    }
}
