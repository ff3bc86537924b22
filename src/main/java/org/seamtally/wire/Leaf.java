package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;

/**
 * A single value of a request as it was sent, so that reading never fails on one: whether it is what is due is for the
 * constraints to say, all of them at once.
 *
 * @param kind which sort of token it was
 * @param text the token, without the quotes of a string
 */
@JsonDeserialize(using = Leaf.Reader.class)
public record Leaf(Kind kind, String text) {

    /** The sorts of token. */
    public enum Kind {
        TEXT,
        NUMBER,
        TRUTH
    }

    /** A string, as a table or a shell would send it. */
    public static Leaf text(String text) {
        return new Leaf(Kind.TEXT, text);
    }

    /** The token as it would be quoted back, cut short where it is long. */
    String given() {
        String shown = Quoted.cut(text);
        return kind == Kind.TEXT ? "\"" + shown + "\"" : shown;
    }

    /** Takes any single token; a structure where a value is due is a finding. */
    static final class Reader extends StdDeserializer<Leaf> {

        private static final long serialVersionUID = 1;

        Reader() {
            super(Leaf.class);
        }

        @Override
        public Leaf deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            switch (parser.currentToken()) {
                case VALUE_STRING:
                    return new Leaf(Kind.TEXT, parser.getText());
                case VALUE_NUMBER_INT:
                case VALUE_NUMBER_FLOAT:
                    return new Leaf(Kind.NUMBER, parser.getText());
                case VALUE_TRUE:
                case VALUE_FALSE:
                    return new Leaf(Kind.TRUTH, parser.getText());
                default:
                    Misfits.of(context)
                            .add(Misfits.path(parser), Violation.Key.SHAPE, "a single value is due here", null);
                    parser.skipChildren();
                    return null;
            }
        }
    }
}
