package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a service has acknowledged to keep: the answers, by what they are about. Safe for several threads. */
final class Acknowledged {

    private final Map<String, List<JsonNode>> quotes = new LinkedHashMap<>();
    private final Map<String, List<JsonNode>> books = new LinkedHashMap<>();

    /** An answer that tells of a quote's revision. */
    synchronized void revision(JsonNode answer) {
        add(quotes, answer.get("id").asText(), answer, answer.get("revision").asInt());
    }

    /** An answer that tells of a price book's version. */
    synchronized void version(JsonNode answer) {
        add(books, answer.get("name").asText(), answer, answer.get("version").asInt());
    }

    private static void add(Map<String, List<JsonNode>> to, String name, JsonNode answer, int number) {
        List<JsonNode> known = to.computeIfAbsent(name, key -> new ArrayList<>());
        if (number != known.size() + 1) {
            throw new AssertionError(name + " has number " + number + " after " + known.size());
        }
        known.add(answer);
    }

    /** A copy of what is acknowledged by now. */
    synchronized Acknowledged untilNow() {
        Acknowledged copy = new Acknowledged();
        quotes.forEach((id, revisions) -> copy.quotes.put(id, new ArrayList<>(revisions)));
        books.forEach((name, versions) -> copy.books.put(name, new ArrayList<>(versions)));
        return copy;
    }

    /**
     * Each acknowledged write is kept once, as it was answered, and nothing besides.
     *
     * @throws AssertionError where something is lost, doubled, halved or changed
     */
    synchronized void checkAllAndNothingElse(KeptClient client) throws IOException, InterruptedException {
        Set<String> ids = new HashSet<>();
        Set<String> numbers = new HashSet<>();
        for (JsonNode item : client.list("/v1/quotes")) {
            require(ids.add(item.get("id").asText()), "listed twice: " + item);
            require(numbers.add(item.get("number").asText()), "a number given twice: " + item);
        }
        require(ids.equals(quotes.keySet()), "quotes kept " + ids.size() + ", acknowledged " + quotes.size());
        Set<String> names = new HashSet<>();
        client.list("/v1/price-books")
                .forEach(item -> names.add(item.get("name").asText()));
        require(names.equals(books.keySet()), "price books kept " + names + ", acknowledged " + books.keySet());
        check(client, true);
    }

    /** Each acknowledged write is kept, as it was answered; whether more is kept is not looked at. */
    synchronized void checkAll(KeptClient client) throws IOException, InterruptedException {
        check(client, false);
    }

    private void check(KeptClient client, boolean nothingElse) throws IOException, InterruptedException {
        int revisions = 0;
        for (Map.Entry<String, List<JsonNode>> quote : quotes.entrySet()) {
            String path = "/v1/quotes/" + quote.getKey();
            running(client.read(path).get("revisions"), "revision", quote.getValue(), nothingElse, path);
            for (JsonNode answer : quote.getValue()) {
                JsonNode kept = client.read(path + "/revisions/" + answer.get("revision"));
                // the others that there are change with each revision
                require(without(kept).equals(without(answer)), "changed: " + path + "\n" + answer + "\n" + kept);
                addsUp(kept.get("estimate").get("cost"));
                revisions++;
            }
        }
        int versions = 0;
        for (Map.Entry<String, List<JsonNode>> book : books.entrySet()) {
            String path = "/v1/price-books/" + book.getKey().replace(" ", "%20");
            running(client.read(path).get("versions"), "version", book.getValue(), nothingElse, path);
            for (JsonNode answer : book.getValue()) {
                JsonNode kept = client.read(path + "/versions/" + answer.get("version"));
                require(kept.equals(answer), "changed: " + path + "\n" + answer + "\n" + kept);
                versions++;
            }
        }
        System.out.println(quotes.size() + " quotes with " + revisions + " revisions, " + books.size()
                + " price books with " + versions + " versions: all there, whole, once");
    }

    private static void running(
            JsonNode kept, String number, List<JsonNode> acknowledged, boolean nothingElse, String path) {
        for (int i = 0; i < kept.size(); i++) {
            require(kept.get(i).get(number).asInt() == i + 1, "a gap: " + path + " " + kept);
        }
        require(
                nothingElse ? kept.size() == acknowledged.size() : kept.size() >= acknowledged.size(),
                path + ": " + kept.size() + " kept, " + acknowledged.size() + " acknowledged");
    }

    private static JsonNode without(JsonNode answer) {
        return ((ObjectNode) answer.deepCopy()).without("revisions");
    }

    private static void addsUp(JsonNode cost) {
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : cost.get("lines")) {
            sum = sum.add(new BigDecimal(line.get("amount").asText()));
        }
        require(sum.compareTo(new BigDecimal(cost.get("total").asText())) == 0, "lines do not add up: " + cost);
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }
}
