package org.seamtally.load;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Kills the service (SIGKILL) at seeded times, over and over, while it works on one kept batch. The batch must end, with
 * each line once and the very bytes of an undisturbed run. On the embedded database there is one process; on PostgreSQL two
 * replicas share the batch, and one of them is killed. What a kill hit is read from the database afterwards: a chunk that
 * was handed out and has no result.
 */
public final class BatchKill {

    private final Path work;
    private final Path jobs;
    private final long frames;
    private final int kills;
    private final int needed;
    private final SplittableRandom random;

    private BatchKill(Path work, Path jobs, long frames, int kills, int needed, long seed) {
        this.work = work;
        this.jobs = jobs;
        this.frames = frames;
        this.kills = kills;
        this.needed = needed;
        this.random = new SplittableRandom(seed);
    }

    /** @param args folder to work in, job file, frames in it, kills, how many of them must hit a picked chunk, seed */
    public static void main(String[] args) throws Exception {
        Path work = Path.of(args[0]);
        Path jobs = Path.of(args[1]);
        long frames = Long.parseLong(args[2]);
        int kills = Integer.parseInt(args[3]);
        int needed = Integer.parseInt(args[4]);
        long seed = Long.parseLong(args[5]);
        System.out.println("seed " + seed + ", " + frames + " frames, " + kills + " kills");
        Path undisturbed = new BatchKill(work, jobs, frames, 0, 0, seed).embedded("undisturbed");
        Kept.check(undisturbed, frames);
        Path embedded = new BatchKill(work, jobs, frames, kills, needed, seed).embedded("embedded");
        Kept.same(undisturbed, embedded);
        Path shared = new BatchKill(work, jobs, frames, kills, needed, seed).postgres();
        Kept.same(undisturbed, shared);
        System.out.println("no line lost or doubled; results identical to the undisturbed run's");
    }

    /** One process on the embedded database. */
    private Path embedded(String name) throws Exception {
        Path database = work.resolve(name);
        String url = "jdbc:h2:file:" + database.toAbsolutePath();
        Path log = work.resolve(name + ".log");
        ServiceProcess[] service = {start(url, "", "", log)};
        try {
            KeptBatchClient client = new KeptBatchClient(() -> service[0]);
            String batch = client.send(jobs, name);
            int hits = 0;
            for (int kill = 1; kill <= kills; kill++) {
                awaitMoment();
                notEndedBefore(client, batch, kill);
                service[0].kill();
                // the file is free now: what was picked shows in it
                int picked = new Picks(url, "sa", "").unfinished();
                hits += picked > 0 ? 1 : 0;
                System.out.println(name + ": kill " + kill + ", " + picked + " chunks picked and unfinished");
                service[0] = start(url, "", "", log);
            }
            enough(hits);
            return finished(client, batch, name);
        } finally {
            service[0].close();
        }
    }

    /** Two replicas on one PostgreSQL: the one or the other is killed. */
    private Path postgres() throws Exception {
        try (PostgresServer server = new PostgresServer(work.resolve("postgres-data"))) {
            String url = server.url();
            Path log = work.resolve("postgres.log");
            ServiceProcess[] replicas = {
                start(url, PostgresServer.USER, PostgresServer.USER, log),
                start(url, PostgresServer.USER, PostgresServer.USER, log)
            };
            try {
                KeptBatchClient client = new KeptBatchClient(() -> replicas[0]);
                String batch = client.send(jobs, "postgres");
                Picks picks = new Picks(url, PostgresServer.USER, PostgresServer.USER);
                int hits = 0;
                for (int kill = 1; kill <= kills; kill++) {
                    awaitMoment();
                    notEndedBefore(client, batch, kill);
                    int victim = random.nextInt(replicas.length);
                    long process = replicas[victim].pid();
                    replicas[victim].kill();
                    int picked = picks.unfinishedBy(process);
                    hits += picked > 0 ? 1 : 0;
                    System.out.println("postgres: kill " + kill + ", of replica " + (victim + 1) + ", " + picked
                            + " of its chunks picked and unfinished");
                    replicas[victim] = start(url, PostgresServer.USER, PostgresServer.USER, log);
                }
                enough(hits);
                return finished(client, batch, "postgres");
            } finally {
                for (ServiceProcess replica : replicas) {
                    replica.close();
                }
            }
        }
    }

    private ServiceProcess start(String url, String user, String password, Path log)
            throws IOException, InterruptedException {
        Map<String, String> settings = new HashMap<>(Map.of("seamtally.database.url", url));
        if (!user.isEmpty()) {
            settings.put("seamtally.database.username", user);
            settings.put("seamtally.database.password", password);
        }
        return ServiceProcess.start(List.of("-Xmx256m"), settings, log).awaitReady();
    }

    private void awaitMoment() throws InterruptedException {
        Thread.sleep(random.nextLong(100, 1200));
    }

    private static void notEndedBefore(KeptBatchClient client, String batch, int kill) throws InterruptedException {
        if (client.done(batch)) {
            throw new AssertionError("the batch ended before kill " + kill + ": more frames are needed");
        }
    }

    private void enough(int hits) {
        System.out.println(hits + " of " + kills + " kills hit a picked chunk; at least " + needed + " must");
        if (hits < needed) {
            throw new AssertionError("too few kills hit a picked chunk: " + hits);
        }
    }

    private Path finished(KeptBatchClient client, String batch, String name) throws Exception {
        client.awaitDone(batch);
        Path results = work.resolve(name + ".results.ndjson");
        client.results(batch, results);
        return results;
    }
}
