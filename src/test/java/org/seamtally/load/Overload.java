package org.seamtally.load;

import java.io.BufferedWriter;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Sends a service several times what it can work out: what is taken must go on as fast as before, the rest be refused
 * quickly, and all be as before right after.
 */
final class Overload {

    private static final int JOINTS = 150;

    // all different; what the service remembers of one is gone by the next time that it is sent
    private static final int FRAMES = 2_000;

    private static final double TIMES_CAPACITY = 4;

    // the service never waits for a request, and has no more than it lets wait
    private static final int SENDERS = 2;

    private static final int RECOVERY_S = 5;

    private static final double LEAST_SHARE = 0.80;
    private static final double MOST_TIMES_NORMAL = 3;

    // of what is sent at this share of capacity all is answered
    private static final double FULL_SPEED = 0.90;

    private final List<byte[]> frames;
    private final URI uri;
    private long sent;
    private boolean held = true;

    private Overload(URI uri, List<byte[]> frames) {
        this.uri = uri;
        this.frames = frames;
    }

    /** Arguments: the service's jar, the generator's script, directory, seconds to warm up, to measure, of overload, seed. */
    public static void main(String[] args) throws Exception {
        Path directory = Path.of(args[2]).toAbsolutePath();
        int warm = Integer.parseInt(args[3]);
        int measured = Integer.parseInt(args[4]);
        int over = Integer.parseInt(args[5]);
        long seed = Long.parseLong(args[6]);
        Path bodies = bodies(directory, seed);
        boolean held;
        try (ServiceProcess service = ClosedLoop.served(Path.of(args[0]), directory, "service", "2S")) {
            Path script = Path.of(args[1]);
            String path = "/v1/frame-estimates";
            List<byte[]> frames = Files.readAllLines(bodies).stream()
                    .map(line -> line.getBytes(StandardCharsets.UTF_8))
                    .toList();
            Overload run = new Overload(URI.create(service.url(path)), frames);
            ClosedLoop.Round warming = ClosedLoop.warmUp(service, path, script, bodies, SENDERS, warm);
            // sending away is compiled beforehand too
            run.send(warming.rate() * TIMES_CAPACITY, warm / 3.0);
            double capacity = ClosedLoop.run(service, path, script, bodies, FRAMES / 2, SENDERS, measured)
                    .rate();
            run.measure(capacity, measured, over);
            System.out.printf(
                    Locale.ROOT,
                    "%nframes of %d joints, seed %d, %s %s%n%s%n",
                    JOINTS,
                    seed,
                    System.getProperty("java.vm.name"),
                    System.getProperty("java.version"),
                    run.held ? "all held" : "NOT ALL HELD");
            held = run.held;
        }
        if (!held) {
            System.exit(1);
        }
    }

    private static Path bodies(Path directory, long seed) throws IOException {
        Path file = directory.resolve("frames.ndjson");
        LoadBodies made = new LoadBodies(seed, false);
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < FRAMES; i++) {
                out.write(made.frame(JOINTS));
                out.write('\n');
            }
        }
        return file;
    }

    private List<OpenLoop.Answer> send(double perSecond, double seconds) throws InterruptedException {
        long begin = sent;
        sent += Math.round(perSecond * seconds);
        return OpenLoop.run(uri, perSecond, seconds, i -> frames.get((int) ((begin + i) % frames.size())));
    }

    private void measure(double capacity, int measured, int over) throws InterruptedException {
        List<OpenLoop.Answer> normal = send(capacity / 2, measured);
        List<OpenLoop.Answer> overloaded = send(capacity * TIMES_CAPACITY, over);
        List<OpenLoop.Answer> after = send(capacity * FULL_SPEED, RECOVERY_S + 5);
        List<OpenLoop.Answer> recovered = after.stream()
                .filter(answer -> answer.dueSeconds() >= RECOVERY_S)
                .toList();
        List<OpenLoop.Answer> usual = of(200, normal);
        List<OpenLoop.Answer> accepted = of(200, overloaded);
        List<OpenLoop.Answer> refused = of(503, overloaded);

        System.out.printf("%-40s %9s %9s %9s %9s%n", "", "sent/s", "answers/s", "p50 ms", "p99 ms");
        System.out.printf(Locale.ROOT, "%-40s %9s %9.1f%n", "capacity: " + SENDERS + " senders", "", capacity);
        row("normal: half of it", capacity / 2, measured, usual);
        row("overloaded, taken", capacity * TIMES_CAPACITY, over, accepted);
        row("overloaded, refused", capacity * TIMES_CAPACITY, over, refused);
        row(RECOVERY_S + " s after", capacity * FULL_SPEED, 5, of(200, recovered));
        System.out.println();

        double share = accepted.size() / (capacity * over);
        holds("taken, of capacity", share, share >= LEAST_SHARE, "at least " + LEAST_SHARE);
        double times = p99(accepted) / p99(usual);
        holds("p99 of what is taken, times normal", times, times <= MOST_TIMES_NORMAL, "at most " + MOST_TIMES_NORMAL);
        double quick = p99(refused) / p99(accepted);
        holds("p99 of refusals, of what is taken", quick, quick <= 1, "at most 1");
        int others = overloaded.size() - accepted.size() - refused.size();
        holds("neither answered nor refused with 503", others, others == 0, "none");
        int lost = normal.size() - usual.size();
        holds("refused at half of capacity", lost, lost == 0, "none");
        int late = recovered.size() - of(200, recovered).size();
        holds("refused " + RECOVERY_S + " s after, at " + FULL_SPEED + " of capacity", late, late == 0, "none");
    }

    private static List<OpenLoop.Answer> of(int status, List<OpenLoop.Answer> all) {
        return all.stream().filter(answer -> answer.status() == status).toList();
    }

    private static double p99(List<OpenLoop.Answer> answers) {
        return OpenLoop.percentile(answers, 0.99);
    }

    private static void row(String what, double perSecond, double seconds, List<OpenLoop.Answer> answers) {
        System.out.printf(
                Locale.ROOT,
                "%-40s %9.1f %9.1f %9.1f %9.1f%n",
                what,
                perSecond,
                answers.size() / seconds,
                OpenLoop.percentile(answers, 0.5),
                p99(answers));
    }

    private void holds(String what, double is, boolean holds, String due) {
        held &= holds;
        System.out.printf(Locale.ROOT, "%-40s %9.2f   %s: %s%n", what, is, due, holds ? "held" : "NOT HELD");
    }
}
