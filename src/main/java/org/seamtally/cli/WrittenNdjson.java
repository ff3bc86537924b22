package org.seamtally.cli;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import org.seamtally.batch.Counts;
import org.seamtally.wire.Json;

/** Results with a JSON object a line. Only the beginning of a line is held: an estimate may be long. */
final class WrittenNdjson implements WrittenResults.Lines {

    // {"line": n, "estimate" and the whole trailer fit, whatever their numbers
    private static final int BEGINNING = 256;

    private final InputStream in;
    private long position;

    WrittenNdjson(InputStream in) {
        this.in = in;
    }

    @Override
    public WrittenResults.Line next() throws IOException {
        ByteArrayOutputStream beginning = new ByteArrayOutputStream(BEGINNING);
        long length = 0;
        for (int b = in.read(); b >= 0; b = in.read()) {
            length++;
            if (b == '\n') {
                position += length;
                return line(beginning.toByteArray());
            }
            if (beginning.size() < BEGINNING) {
                beginning.write(b);
            }
        }
        return length == 0 ? null : new WrittenResults.Torn();
    }

    @Override
    public long position() {
        return position;
    }

    private static WrittenResults.Line line(byte[] beginning) throws IOException {
        try (JsonParser json = Json.mapper().getFactory().createParser(beginning)) {
            json.nextToken();
            String first = json.nextFieldName();
            json.nextToken();
            if ("trailer".equals(first)) {
                // the whole line: a trailer is short
                return trailer(Json.mapper().readTree(beginning).path("trailer"));
            }
            if (!"line".equals(first) || json.currentToken() != JsonToken.VALUE_NUMBER_INT) {
                return new WrittenResults.Foreign();
            }
            long line = json.getLongValue();
            String what = json.nextFieldName();
            if ("estimate".equals(what) || "problem".equals(what)) {
                return new WrittenResults.Result(line, what.equals("problem"));
            }
            return new WrittenResults.Foreign();
        } catch (JsonProcessingException | IllegalArgumentException e) {
            return new WrittenResults.Foreign();
        }
    }

    private static WrittenResults.Line trailer(JsonNode trailer) {
        return trailer.path("complete").booleanValue()
                ? new WrittenResults.Trailer(new Counts(
                        trailer.path("read").longValue(),
                        trailer.path("done").longValue(),
                        trailer.path("refused").longValue()))
                : new WrittenResults.Foreign();
    }
}
