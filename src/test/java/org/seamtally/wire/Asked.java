package org.seamtally.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamtally.quantity.UnitSystem;

/** Asks the engine as a user would: a text in, a tree or the violations out. */
final class Asked {

    private static final Engine ENGINE = new Engine("test");

    private Asked() {}

    /** One of the engine's entries. */
    interface Entry<A> {
        Outcome<A> ask(Engine engine, InputStream in, UnitSystem units) throws IOException;
    }

    static <A> JsonNode answer(Entry<A> entry, String request) throws IOException {
        return answer(entry, request, UnitSystem.SI);
    }

    static <A> JsonNode answer(Entry<A> entry, String request, UnitSystem units) throws IOException {
        Outcome<A> outcome = outcome(entry, request, units);
        if (outcome instanceof Outcome.Refused<A> refused) {
            throw new AssertionError("refused: " + refused.problem().violations() + " for " + request);
        }
        return Json.mapper().valueToTree(((Outcome.Answered<A>) outcome).answer());
    }

    static <A> List<Violation> refused(Entry<A> entry, String request) throws IOException {
        Outcome<A> outcome = outcome(entry, request, UnitSystem.SI);
        if (outcome instanceof Outcome.Answered<A>) {
            throw new AssertionError("not refused: " + request);
        }
        return ((Outcome.Refused<A>) outcome).problem().violations();
    }

    private static <A> Outcome<A> outcome(Entry<A> entry, String request, UnitSystem units) throws IOException {
        String json = request.replace('\'', '"');
        return entry.ask(ENGINE, new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)), units);
    }
}
