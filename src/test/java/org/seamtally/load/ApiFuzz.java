package org.seamtally.load;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/**
 * Asks the packaged service, at every endpoint of its description, what fits and what does not quite: {@code
 * load-tests/fuzz}. Each answer is checked, and at last that both were asked enough, and that the service holds no more than
 * it did.
 */
@Command(name = "fuzz", mixinStandardHelpOptions = true)
public final class ApiFuzz implements Callable<Integer> {

    private static final double MUTATED = 0.6;
    private static final double LEAST_MUTATED = 0.5;
    private static final double LEAST_ACCEPTED = 0.1;
    private static final double MOST_MORE = 0.10;
    private static final int MOST_TOLD = 40;
    /** Counted where a status is: the answer began and was cut. */
    private static final int CUT = 1;

    // an answer takes milliseconds; a machine that does a great deal else has to be waited for
    private static final Duration PATIENCE = Duration.ofSeconds(90);

    @Option(names = "--document", required = true, description = "The API's description.")
    private Path description;

    @Option(names = "--directory", required = true, description = "Where the service keeps its things.")
    private Path directory;

    @Option(names = "--requests", required = true, description = "Requests to be sent.")
    private long requests;

    @Option(names = "--seed", required = true, description = "Of all that is left to chance.")
    private long seed;

    @Option(names = "--clients", defaultValue = "3", description = "Requests at a time; ${DEFAULT-VALUE} unless said.")
    private int clients;

    @Option(names = "--heap", defaultValue = "-Xmx256m", description = "Of the service.")
    private String heap;

    @Option(
            names = "--settled",
            description = "Whether it is long enough for the service to hold what it always holds.")
    private boolean settled;

    @Option(
            names = "--postgres",
            description =
                    "Keep things on a PostgreSQL server: the embedded database's own books of its file, which grow with"
                            + " what is kept, are then not among what lives.")
    private boolean postgres;

    @Option(names = "--request", description = "The seed of one request alone, as a fault tells it.")
    private Long only;

    private ApiDocument document;
    private AnswerChecks checks;
    private FuzzRequests maker;
    private final KnownThings known = new KnownThings();
    private SplittableRandom seeds;

    private final Map<String, Map<Integer, Long>> counts = new TreeMap<>();
    /** Nanoseconds from request to answer, by endpoint. */
    private final Map<String, Long> taken = new TreeMap<>();

    private final Map<String, Long> faults = new TreeMap<>();
    private long sent;
    private long mutated;
    private long accepted;
    private long slowest;
    private String slowestName = "";
    private long early;
    private long late;

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new ApiFuzz()).execute(args));
    }

    @Override
    public Integer call() throws Exception {
        document = ApiDocument.read(description);
        checks = new AnswerChecks(document);
        maker = new FuzzRequests(document, known, requests);
        seeds = new SplittableRandom(seed);
        System.out.println("seed " + seed + ", " + requests + " requests, "
                + document.operations().size() + " endpoints");
        if (postgres) {
            try (PostgresServer server = new PostgresServer(directory.resolve("postgres-data"))) {
                return call(server.settings());
            }
        }
        return call(Map.of(
                "seamtally.database.url",
                "jdbc:h2:file:" + directory.resolve("kept").toAbsolutePath()));
    }

    private int call(Map<String, String> settings) throws Exception {
        long start = System.nanoTime();
        try (ServiceProcess service = ServiceProcess.start(List.of(heap), settings, directory.resolve("service.log"))
                .awaitReady()) {
            if (only != null) {
                sent++;
                try (RawConnection connection =
                        new RawConnection(service.uri("/").getPort(), PATIENCE)) {
                    ask(connection, only, service.uri("/").getAuthority());
                }
                System.out.println(counts);
                return faults.isEmpty() ? 0 : 1;
            }
            start = System.nanoTime();
            ask(service, requests / 10);
            early = LiveHeap.of(service.pid());
            ask(service, requests * 9 / 10);
            late = LiveHeap.of(service.pid());
            ask(service, requests);
        }
        return report((System.nanoTime() - start) / 1e9);
    }

    /** Sends requests until so many were sent in all. */
    private void ask(ServiceProcess service, long until) throws InterruptedException, ExecutionException {
        ExecutorService workers = Executors.newFixedThreadPool(clients);
        List<Future<?>> all = new ArrayList<>();
        for (int i = 0; i < clients; i++) {
            all.add(workers.submit(() -> {
                try (RawConnection connection =
                        new RawConnection(service.uri("/").getPort(), PATIENCE)) {
                    for (Long own = next(until); own != null; own = next(until)) {
                        ask(connection, own, service.uri("/").getAuthority());
                    }
                }
                return null;
            }));
        }
        for (Future<?> worker : all) {
            worker.get();
        }
        workers.shutdown();
    }

    private synchronized Long next(long until) {
        if (sent >= until) {
            return null;
        }
        sent++;
        return seeds.nextLong();
    }

    private void ask(RawConnection connection, long own, String host) {
        Dice dice = new Dice(own);
        FuzzRequest request = maker.any(dice);
        if (dice.chance(MUTATED)) {
            Mutations.mutate(request, dice);
        }
        byte[] bytes = request.bytes(host);
        long start = System.nanoTime();
        try {
            RawConnection.Answer answer = connection.exchange(bytes, !request.method.equals("HEAD"));
            if (AnswerChecks.isAccepted(answer)
                    && request.touched.stream().noneMatch(FuzzRequest.Touched.TARGET::equals)) {
                learn(request, answer);
            }
            count(request, answer.status(), System.nanoTime() - start);
            List<String> found = checks.faults(request, answer);
            if (!found.isEmpty()) {
                tell(request, bytes, own, found, answer);
            }
        } catch (EOFException e) {
            // an answer that goes out while its request comes in is cut where that turns out to be broken
            boolean cut = request.touched.contains(FuzzRequest.Touched.BODY)
                    && !request.parts.isEmpty()
                    && request.parts.get(0).name() != null;
            count(request, CUT, System.nanoTime() - start);
            if (!cut) {
                tell(request, bytes, own, List.of(e.toString()), null);
            }
        } catch (IOException | RuntimeException e) {
            count(request, 0, System.nanoTime() - start);
            tell(request, bytes, own, List.of(e.toString()), null);
        }
    }

    private void learn(FuzzRequest request, RawConnection.Answer answer) {
        JsonNode told = AnswerChecks.JSON.missingNode();
        if (answer.header("content-type").startsWith("application/json")) {
            try {
                told = AnswerChecks.JSON.readTree(answer.text());
            } catch (JsonProcessingException e) {
                // the checks tell of it
            }
        }
        String tag = answer.header("etag");
        known.learn(document, request, told, tag.isEmpty() ? null : tag, answer.status() == 204);
    }

    private synchronized void count(FuzzRequest request, int status, long took) {
        counts.computeIfAbsent(request.operation.name(), any -> new TreeMap<>()).merge(status, 1L, Long::sum);
        taken.merge(request.operation.name(), took, Long::sum);
        mutated += request.touched.isEmpty() ? 0 : 1;
        accepted += status / 100 == 2 ? 1 : 0;
        if (took > slowest) {
            slowest = took;
            slowestName = request.operation.name();
        }
    }

    private synchronized void tell(
            FuzzRequest request, byte[] bytes, long own, List<String> found, RawConnection.Answer answer) {
        for (String fault : found) {
            String kind = request.operation.name() + ": " + fault.replaceAll("[0-9]+", "#");
            if (faults.merge(kind, 1L, Long::sum) == 1 && faults.size() <= MOST_TOLD) {
                System.out.println("FAULT (request of seed " + own + ") " + request.operation.name() + ": " + fault);
                System.out.println("  sent: " + shown(bytes, 1500));
                System.out.println("  came: "
                        + (answer == null
                                ? "nothing"
                                : answer.status() + " " + answer.headers() + " " + shown(answer.body(), 700)));
            }
        }
    }

    private static String shown(byte[] bytes, int most) {
        String text = new String(bytes, StandardCharsets.UTF_8)
                .replace("\r", "\\r")
                .replace("\n", "\\n")
                .replace("\u0000", "\\0");
        return text.length() > most ? text.substring(0, most) + "…" : text;
    }

    private int report(double seconds) {
        System.out.printf(
                Locale.ROOT, "%-52s %8s %8s %8s  %s%n", "endpoint", "asked", "accepted", "ms each", "by status");
        Map<Integer, Long> byStatus = new TreeMap<>();
        List<String> missed = new ArrayList<>();
        for (ApiDocument.Operation operation : document.operations()) {
            Map<Integer, Long> of = counts.getOrDefault(operation.name(), Map.of());
            long asked = of.values().stream().mapToLong(Long::longValue).sum();
            long fit = of.entrySet().stream()
                    .filter(entry -> entry.getKey() / 100 == 2)
                    .mapToLong(Map.Entry::getValue)
                    .sum();
            of.forEach((status, times) -> byStatus.merge(status, times, Long::sum));
            double each = taken.getOrDefault(operation.name(), 0L) / 1e6 / Math.max(1, asked);
            System.out.printf(Locale.ROOT, "%-52s %8d %8d %8.1f  %s%n", operation.name(), asked, fit, each, of);
            // a server's own tools copy what is kept there
            if (fit == 0 && !(postgres && operation.name().equals("GET /v1/backup"))) {
                missed.add(operation.name() + " never accepted anything");
            }
        }
        double shareMutated = (double) mutated / sent;
        double shareAccepted = (double) accepted / sent;
        double more = (double) late / early - 1;
        System.out.printf(
                Locale.ROOT,
                "%d requests in %.1f s, %.0f a second; mutated %.1f %%, accepted %.1f %%; by status %s%n",
                sent,
                seconds,
                sent / seconds,
                100 * shareMutated,
                100 * shareAccepted,
                byStatus);
        System.out.printf(
                Locale.ROOT,
                "slowest answer %.2f s (%s); live heap %.2f MB at a tenth, %.2f MB at nine tenths (%+.1f %%)%n",
                slowest / 1e9,
                slowestName,
                early / 1e6,
                late / 1e6,
                100 * more);
        if (shareMutated < LEAST_MUTATED) {
            missed.add("fewer mutated than half");
        }
        if (shareAccepted < LEAST_ACCEPTED) {
            missed.add("fewer accepted than a tenth");
        }
        if (settled && more > MOST_MORE) {
            missed.add("the service holds more than it did");
        }
        faults.forEach((kind, times) -> missed.add(times + " × " + kind));
        missed.forEach(miss -> System.out.println("MISSED: " + miss));
        return missed.isEmpty() ? 0 : 1;
    }
}
