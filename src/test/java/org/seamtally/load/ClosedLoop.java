package org.seamtally.load;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Senders who each wait for their answer before they send again: a general-purpose load generator (wrk), on one core. */
final class ClosedLoop {

    private static final Pattern SUMMARY =
            Pattern.compile("requests (\\d+) refused (\\d+) failed (\\d+) microseconds (\\d+)");

    private ClosedLoop() {}

    /** What was answered, and what it took of the server. */
    record Round(long requests, double seconds, double cpuSeconds) {

        double rate() {
            return requests / seconds;
        }

        /** Processor time of the server for one request, in milliseconds. */
        double cpuMillis() {
            return 1e3 * cpuSeconds / requests;
        }
    }

    /** A round, with how many of its requests were answered with another status than 200, and how many not at all. */
    private record Sent(Round round, long refused, long failed, String said) {}

    /**
     * A service on the core that the generator leaves it, ready, with a database of its own in memory.
     *
     * @param longestWait for an estimate's turn, as the setting of that name
     */
    static ServiceProcess served(Path jar, Path directory, String name, String longestWait)
            throws IOException, InterruptedException {
        return ServiceProcess.start(
                        List.of("taskset", "-c", "0"),
                        jar,
                        List.of("-Xmx512m"),
                        Map.of(
                                "seamtally.database.url",
                                "jdbc:h2:mem:" + name,
                                "seamtally.estimates.longest-wait",
                                longestWait),
                        directory.resolve(name + ".log"))
                .awaitReady();
    }

    /**
     * Sends for some seconds.
     *
     * @param script the generator's script
     * @param bodies a file of bodies, one a line
     * @param from the line to begin at, so that no round sends what another sent
     */
    static Round run(ServiceProcess service, String path, Path script, Path bodies, long from, int senders, int seconds)
            throws IOException, InterruptedException {
        Sent sent = send(service, path, script, bodies, from, senders, seconds);
        if (sent.refused() != 0 || sent.failed() != 0) {
            throw new IOException(path + ": not every request was answered with 200: " + sent.said());
        }
        return sent.round();
    }

    /** Sends for some seconds; a server that is not yet warm may refuse some of it. */
    static Round warmUp(ServiceProcess service, String path, Path script, Path bodies, int senders, int seconds)
            throws IOException, InterruptedException {
        Sent sent = send(service, path, script, bodies, 0, senders, seconds);
        if (sent.failed() != 0 || sent.refused() > sent.round().requests() / 2) {
            throw new IOException(path + ": hardly answered: " + sent.said());
        }
        return sent.round();
    }

    private static Sent send(
            ServiceProcess service, String path, Path script, Path bodies, long from, int senders, int seconds)
            throws IOException, InterruptedException {
        double before = service.cpuSeconds();
        ProcessBuilder wrk = new ProcessBuilder(List.of(
                        "taskset",
                        "-c",
                        "1",
                        "wrk",
                        "-t1",
                        "-c" + senders,
                        "-d" + seconds + "s",
                        "--timeout",
                        "30s",
                        "-s",
                        script.toString(),
                        service.url(path)))
                .redirectErrorStream(true);
        wrk.environment().put("BODIES", bodies.toString());
        wrk.environment().put("FROM", Long.toString(from));
        Process process = wrk.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        Matcher summary = SUMMARY.matcher(said);
        if (!summary.find()) {
            throw new IOException("the load generator said: " + said);
        }
        Round round = new Round(
                Long.parseLong(summary.group(1)),
                Long.parseLong(summary.group(4)) / 1e6,
                service.cpuSeconds() - before);
        return new Sent(round, Long.parseLong(summary.group(2)), Long.parseLong(summary.group(3)), said);
    }
}
