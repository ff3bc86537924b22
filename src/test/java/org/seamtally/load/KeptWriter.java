package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.ConnectException;
import java.net.http.HttpResponse;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Writes quotes, revisions of them and versions of a price book of its own, one after the other. What is not answered, or
 * is answered 503 or 409 because its key is still held, is put aside and sent again with its key until it is acknowledged.
 */
final class KeptWriter implements Callable<Void> {

    // whoever died with a key in hand holds it for a minute
    private static final long PATIENCE_NS = 120_000_000_000L;

    private static final int MOST_ASIDE = 3;

    private final KeptClient client;
    private final Acknowledged acknowledged;
    private final String name;
    private final SplittableRandom random;
    private final MadeQuotes bodies;
    private final AtomicBoolean stopped = new AtomicBoolean();
    private final AtomicInteger broken = new AtomicInteger();
    private final AtomicInteger refused = new AtomicInteger();
    private final AtomicInteger kept = new AtomicInteger();
    private final Deque<Write> aside = new ArrayDeque<>();
    private final List<JsonNode> quotes = new ArrayList<>();
    private boolean bookIsFree = true;
    private int versions;
    private int keys;

    /** @param name no other writer has it */
    KeptWriter(KeptClient client, Acknowledged acknowledged, String name, long seed) {
        this.client = client;
        this.acknowledged = acknowledged;
        this.name = name;
        this.random = new SplittableRandom(seed ^ name.hashCode());
        this.bodies = new MadeQuotes(name, random.nextLong(), 3);
    }

    /** Begins nothing new; what is put aside is still ended. */
    void stop() {
        stopped.set(true);
    }

    /** Writes whose answer broke off: a fault hit them. */
    int broken() {
        return broken.get();
    }

    /** Writes that were acknowledged. */
    int kept() {
        return kept.get();
    }

    /** Writes that were answered 503. */
    int refused() {
        return refused.get();
    }

    @Override
    public Void call() throws Exception {
        while (!stopped.get()) {
            // while the service is down nothing piles up
            attempt(aside.size() > MOST_ASIDE || !aside.isEmpty() && random.nextInt(4) == 0 ? aside.poll() : next());
        }
        long end = System.nanoTime() + PATIENCE_NS;
        while (!aside.isEmpty()) {
            if (System.nanoTime() > end) {
                throw new AssertionError(name + ": " + aside.size() + " writes are never acknowledged");
            }
            attempt(aside.poll());
            Thread.sleep(20);
        }
        return null;
    }

    private Write next() throws IOException {
        int kind = random.nextInt(4);
        if (kind == 0 && bookIsFree) {
            bookIsFree = false;
            return new Version(bodies.version(), versions);
        }
        if (kind < 3 && !quotes.isEmpty()) {
            // whoever has it is the only one to revise it
            JsonNode quote = quotes.remove(random.nextInt(quotes.size()));
            return new Revision(quote, bodies.quote(), key());
        }
        return new Creation(bodies.quote(), key());
    }

    private String key() {
        keys++;
        return name.replace(' ', '-') + "-" + keys;
    }

    private void attempt(Write write) throws IOException, InterruptedException {
        try {
            HttpResponse<String> answer = write.send();
            if (answer == null) {
                return;
            }
            if (answer.statusCode() == 201) {
                write.done(KeptClient.JSON.readTree(answer.body()));
                kept.incrementAndGet();
                return;
            }
            if (answer.statusCode() == 503) {
                KeptBatchClient.refusedForNow(answer);
                refused.incrementAndGet();
            } else if (answer.statusCode() != 409 || !answer.body().contains("key-in-flight")) {
                throw new AssertionError(name + ": " + KeptClient.told(answer));
            }
        } catch (ConnectException e) {
            // down just now: nothing was sent
            Thread.sleep(20);
        } catch (IOException e) {
            broken.incrementAndGet();
        }
        aside.add(write);
    }

    private sealed interface Write {

        /** @return null where an earlier attempt is found to have been carried out */
        HttpResponse<String> send() throws IOException, InterruptedException;

        void done(JsonNode answer);
    }

    private final class Creation implements Write {

        private final String body;
        private final String key;

        Creation(String body, String key) {
            this.body = body;
            this.key = key;
        }

        @Override
        public HttpResponse<String> send() throws IOException, InterruptedException {
            return client.create(body, key);
        }

        @Override
        public void done(JsonNode answer) {
            acknowledged.revision(answer);
            quotes.add(answer);
        }
    }

    private final class Revision implements Write {

        private final JsonNode from;
        private final String body;
        private final String key;

        Revision(JsonNode from, String body, String key) {
            this.from = from;
            this.body = body;
            this.key = key;
        }

        @Override
        public HttpResponse<String> send() throws IOException, InterruptedException {
            return client.revise(from.get("id").asText(), from.get("revision").asInt(), body, key);
        }

        @Override
        public void done(JsonNode answer) {
            acknowledged.revision(answer);
            quotes.add(answer);
        }
    }

    /** A PUT, which has no key: whoever lost its answer reads the book, and finds his own note or not. */
    private final class Version implements Write {

        private final String body;
        private final int from;
        private boolean sent;

        Version(String body, int from) {
            this.body = body;
            this.from = from;
        }

        @Override
        public HttpResponse<String> send() throws IOException, InterruptedException {
            if (sent && wasKept()) {
                return null;
            }
            sent = true;
            return client.price(name.replace(" ", "%20"), from, body);
        }

        private boolean wasKept() throws IOException, InterruptedException {
            HttpResponse<String> found =
                    client.get("/v1/price-books/" + name.replace(" ", "%20") + "/versions/" + (from + 1));
            if (found.statusCode() == 404) {
                return false;
            }
            if (found.statusCode() != 200) {
                KeptBatchClient.refusedForNow(found);
                // asked again later
                throw new IOException("not to be had now");
            }
            JsonNode kept = KeptClient.JSON.readTree(found.body());
            if (!kept.get("note").equals(KeptClient.JSON.readTree(body).get("note"))) {
                throw new AssertionError("another's version in a book of one's own: " + kept);
            }
            done(kept);
            return true;
        }

        @Override
        public void done(JsonNode answer) {
            acknowledged.version(answer);
            versions = from + 1;
            bookIsFree = true;
        }
    }
}
