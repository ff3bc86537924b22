package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Many clients at two replicas change one price book, and one quote, from the same state at the same moment: one of them
 * wins each time, the others are told 412. Many send one request with one key: one quote is made.
 */
public final class WriteRace {

    private static final int CLIENTS = 8;

    private final Replicas replicas;
    private final ExecutorService threads = Executors.newFixedThreadPool(CLIENTS);
    private final MadeQuotes bodies;

    private WriteRace(Replicas replicas, long seed) {
        this.replicas = replicas;
        this.bodies = new MadeQuotes("Race", seed, 3);
    }

    /** @param args folder to work in, rounds, seed */
    public static void main(String[] args) throws Exception {
        Path work = Path.of(args[0]);
        int rounds = Integer.parseInt(args[1]);
        long seed = Long.parseLong(args[2]);
        System.out.println("seed " + seed + ", " + rounds + " rounds of " + CLIENTS + " clients at two replicas");
        try (PostgresServer server = new PostgresServer(work.resolve("postgres-data"));
                Replicas replicas = new Replicas(2, server.settings(), work.resolve("write-race.log"))) {
            WriteRace race = new WriteRace(replicas, seed);
            try {
                race.books(rounds);
                race.revisions(rounds);
                race.keys(rounds);
            } finally {
                race.threads.shutdownNow();
            }
        }
    }

    /** Half of the clients ask the one replica, half the other. */
    private KeptClient client(int number) {
        return new KeptClient(() -> replicas.replica(number % 2));
    }

    private interface Ask {
        HttpResponse<String> by(KeptClient client, int number) throws Exception;
    }

    /** All of them at the same moment. */
    private List<HttpResponse<String>> atOnce(Ask ask) throws Exception {
        CyclicBarrier start = new CyclicBarrier(CLIENTS);
        List<Future<HttpResponse<String>>> under = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            int number = i;
            Callable<HttpResponse<String>> asked = () -> {
                start.await(30, TimeUnit.SECONDS);
                return ask.by(client(number), number);
            };
            under.add(threads.submit(asked));
        }
        List<HttpResponse<String>> answers = new ArrayList<>();
        for (Future<HttpResponse<String>> answer : under) {
            answers.add(answer.get(2, TimeUnit.MINUTES));
        }
        return answers;
    }

    /** The one that was answered 201; all others must have been answered 412. */
    private static JsonNode winner(List<HttpResponse<String>> answers) throws Exception {
        JsonNode winner = null;
        for (HttpResponse<String> answer : answers) {
            if (answer.statusCode() == 201 && winner == null) {
                winner = KeptClient.JSON.readTree(answer.body());
            } else if (answer.statusCode() != 412) {
                throw new AssertionError("neither the one winner nor 412: " + KeptClient.told(answer));
            }
        }
        if (winner == null) {
            throw new AssertionError("nobody won: " + KeptClient.told(answers.get(0)));
        }
        return winner;
    }

    private void books(int rounds) throws Exception {
        Acknowledged won = new Acknowledged();
        for (int round = 0; round < rounds; round++) {
            int from = round;
            List<String> sent = new ArrayList<>();
            for (int i = 0; i < CLIENTS; i++) {
                sent.add(bodies.version());
            }
            won.version(winner(atOnce((client, number) -> client.price("Race", from, sent.get(number)))));
        }
        won.checkAllAndNothingElse(client(0));
    }

    private void revisions(int rounds) throws Exception {
        Acknowledged won = new Acknowledged();
        HttpResponse<String> first = client(0).create(bodies.quote(), "race-quote");
        JsonNode quote = KeptClient.JSON.readTree(first.body());
        won.revision(quote);
        for (int round = 1; round <= rounds; round++) {
            int from = round;
            List<String> sent = new ArrayList<>();
            for (int i = 0; i < CLIENTS; i++) {
                sent.add(bodies.quote());
            }
            won.revision(winner(atOnce((client, number) ->
                    client.revise(quote.get("id").asText(), from, sent.get(number), "race-" + from + "-" + number))));
        }
        won.checkAll(client(1));
    }

    /** One request, one key, from all sides: one quote, whose answer everybody gets who gets one. */
    private void keys(int rounds) throws Exception {
        int quotes = client(0).list("/v1/quotes").size();
        int inFlight = 0;
        for (int round = 0; round < rounds; round++) {
            String body = bodies.quote();
            String key = "shared-" + round;
            Set<String> made = new HashSet<>();
            for (HttpResponse<String> answer : atOnce((client, number) -> client.create(body, key))) {
                if (answer.statusCode() == 201) {
                    made.add(answer.body());
                } else if (answer.statusCode() == 409 && answer.body().contains("key-in-flight")) {
                    inFlight++;
                } else {
                    throw new AssertionError("one key from several sides: " + KeptClient.told(answer));
                }
            }
            if (made.size() != 1) {
                throw new AssertionError("one key, " + made.size() + " answers");
            }
        }
        int more = client(0).list("/v1/quotes").size() - quotes;
        if (more != rounds) {
            throw new AssertionError(rounds + " keys, " + more + " quotes");
        }
        System.out.println(rounds + " keys from " + CLIENTS + " sides each: " + more + " quotes, " + inFlight
                + " told that the key is under way");
    }
}
