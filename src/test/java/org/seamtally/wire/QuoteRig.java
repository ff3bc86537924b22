package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.seamtally.batch.MemoryStore;
import org.seamtally.batch.SettableClock;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.quote.MemoryQuotes;
import org.seamtally.quote.PriceBookName;

/** Quotes and price books of one shop, kept in memory, with a clock that stands still. */
final class QuoteRig {

    static final String SHOP = "local";
    static final Instant START = Instant.parse("2031-03-04T12:00:00.5Z");

    final SettableClock clock = new SettableClock(START);
    final MemoryStore keys = new MemoryStore(clock);
    final MemoryQuotes kept = new MemoryQuotes(keys);
    final PriceBooks books = new PriceBooks(kept, clock);
    Quotes quotes = at("1.0.0");

    /** The same shop with another version of the program. */
    Quotes at(String version) {
        return new Quotes(new Engine(version), kept, kept, keys, clock, UUID::randomUUID);
    }

    static InputStream body(String json) {
        return new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8));
    }

    /** A quote's request: a tube on a plate and a plug, with prices of its own or of a book. */
    static RequestTree request(String... fields) {
        RequestTree tree = RequestTree.of("{\"frame\":{\"name\":\"Gate\",\"quantity\":3,\"joints\":["
                + "{\"mark\":\"A\",\"count\":2,\"kind\":\"tube-to-plate\","
                + "\"branch\":{\"outsideDiameter\":\"38 mm\",\"wall\":\"2 mm\"},"
                + "\"plate\":{\"thickness\":\"4 mm\"},\"angle\":\"90 deg\",\"fillet\":{\"leg\":\"3 mm\"}},"
                + "{\"mark\":\"B\",\"count\":4,\"kind\":\"plug\",\"holeDiameter\":\"8 mm\",\"depth\":\"3 mm\"}]}}");
        for (int i = 0; i < fields.length; i += 2) {
            ((ObjectNode) tree.root()).set(fields[i], RequestTree.parse(fields[i + 1]));
        }
        return tree;
    }

    static final String PRICES =
            "{\"currency\":\"EUR\",\"labour\":\"52.00/h\",\"filler\":\"9.50/kg\",\"gas\":\"6.10/m3\",\"overhead\":0.10}";

    static RequestTree priced() {
        return request("prices", PRICES);
    }

    void putBook(String name, int version, String effective, String prices) throws IOException, RefusedException {
        assertInstanceOf(
                PriceBooks.Added.Version.class,
                books.add(
                        SHOP,
                        new PriceBookName(name),
                        body("{\"effective\":\"" + effective + "\",\"prices\":" + prices + "}"),
                        latest -> latest == version - 1));
    }

    Receipt.Kept create(String request) throws IOException, RefusedException {
        return assertInstanceOf(Receipt.Kept.class, quotes.create(SHOP, body(request), UnitSystem.SI, null), request);
    }

    Receipt.Kept revise(UUID quote, int from, String request) throws IOException, RefusedException {
        return assertInstanceOf(
                Receipt.Kept.class,
                quotes.revise(SHOP, quote, body(request), UnitSystem.SI, null, latest -> latest == from),
                request);
    }

    /** The violations, where the request must be refused. */
    List<Violation> refused(String request) {
        return assertThrows(
                        RefusedException.class,
                        () -> quotes.create(SHOP, body(request), UnitSystem.SI, null),
                        () -> "not refused: " + request)
                .problem()
                .violations();
    }

    JsonNode read(UUID quote, int revision, UnitSystem units) throws RefusedException {
        return RequestTree.parse(
                RequestTree.json(quotes.revision(SHOP, quote, revision, units).orElseThrow()));
    }

    JsonNode difference(UUID quote, int from, int to) {
        return RequestTree.parse(
                RequestTree.json(quotes.difference(SHOP, quote, from, to).orElseThrow()));
    }
}
