package org.seamtally.load;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;

/** Makes bodies of quotes and of price-book versions, each with a reference that no other has. */
final class MadeQuotes {

    private static final ObjectMapper JSON = new ObjectMapper();

    private final FrameMaker frames;
    private final String name;
    private int made;

    /**
     * @param name begins each reference
     * @param joints a frame on average
     */
    MadeQuotes(String name, long seed, int joints) {
        this.frames = new FrameMaker(seed, joints, 0);
        this.name = name;
    }

    /** A frame estimate's request, priced. */
    String estimate() throws IOException {
        return priced().toString();
    }

    /** A quote's request, or a revision's. */
    String quote() throws IOException {
        return priced().put("customerReference", reference()).toString();
    }

    private ObjectNode priced() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        JobFileWriter.Ndjson writer = new JobFileWriter.Ndjson(line);
        writer.write(frames.next());
        writer.end();
        ObjectNode quote = (ObjectNode) JSON.readTree(line.toString(UTF_8));
        quote.set("prices", prices());
        return quote;
    }

    /** A price-book version's request. */
    String version() {
        ObjectNode version = JSON.createObjectNode();
        version.put("effective", "2026-01-01");
        version.put("note", reference());
        version.set("prices", prices());
        return version.toString();
    }

    private String reference() {
        made++;
        return name + " " + made;
    }

    private ObjectNode prices() {
        ObjectNode prices = JSON.createObjectNode();
        prices.put("currency", "USD");
        // another price each time
        prices.put("labour", String.format(java.util.Locale.ROOT, "%d.%02d/h", 50 + made % 40, made % 100));
        prices.put("filler", "12.50/lb");
        prices.put("gas", "0.35/ft3");
        return prices;
    }
}
