package org.seamtally.load;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Kills the service (SIGKILL) at seeded times while several clients write quotes, revisions and price books. Each write is
 * sent again with its key until it is acknowledged; in the end every one must be kept once, whole, as it was answered, and
 * nothing besides. On the embedded database there is one process; on PostgreSQL there are two replicas, and one is killed.
 */
public final class WriteKill {

    private static final int WRITERS = 6;

    // acknowledged since the kill before: whoever waits for a dead one's keys to run out is no longer alone
    private static final int AT_WORK = 30;

    private final Path work;
    private final int kills;
    private final long seed;
    private final SplittableRandom random;

    private WriteKill(Path work, int kills, long seed) {
        this.work = work;
        this.kills = kills;
        this.seed = seed;
        this.random = new SplittableRandom(seed);
    }

    /** @param args folder to work in, kills, seed, and the databases: h2, pg */
    public static void main(String[] args) throws Exception {
        WriteKill kill = new WriteKill(Path.of(args[0]), Integer.parseInt(args[1]), Long.parseLong(args[2]));
        System.out.println("seed " + kill.seed + ", " + kill.kills + " kills");
        for (String database : List.of(args).subList(3, args.length)) {
            if (database.equals("h2")) {
                kill.embedded();
            } else {
                kill.postgres();
            }
        }
    }

    private void embedded() throws Exception {
        Map<String, String> settings = Map.of(
                "seamtally.database.url",
                "jdbc:h2:file:" + work.resolve("write-kill").toAbsolutePath());
        killed("embedded", settings, 1);
    }

    private void postgres() throws Exception {
        try (PostgresServer server = new PostgresServer(work.resolve("postgres-data"))) {
            killed("postgres", server.settings(), 2);
        }
    }

    private void killed(String name, Map<String, String> settings, int replicas) throws Exception {
        Path log = work.resolve("write-kill-" + name + ".log");
        Replicas service = new Replicas(replicas, settings, log);
        try (service;
                Writers writers = new Writers(WRITERS, seed, service)) {
            int hits = 0;
            for (int kill = 1; kill <= kills; kill++) {
                writers.awaitMore(AT_WORK);
                Thread.sleep(random.nextLong(20, 500));
                int before = writers.broken();
                int victim = random.nextInt(replicas);
                service.kill(victim);
                // a broken connection is noticed at once
                Thread.sleep(200);
                int broke = writers.broken() - before;
                hits += broke > 0 ? 1 : 0;
                service.start(victim);
            }
            writers.awaitMore(AT_WORK);
            System.out.println(name + ": " + hits + " of " + kills + " kills hit a write under way, " + writers.broken()
                    + " writes in all; at least half of the kills must");
            Acknowledged acknowledged = writers.end();
            if (hits * 2 < kills) {
                throw new AssertionError("too few kills hit a write: " + hits);
            }
            acknowledged.checkAllAndNothingElse(new KeptClient(service));
        }
    }
}
