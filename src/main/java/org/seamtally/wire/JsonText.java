package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * JSON that was written once and stands in an answer as it is.
 *
 * @param utf8 one value
 */
@JsonSerialize(using = JsonText.Writer.class)
public record JsonText(byte[] utf8) {

    /** Passes it through. */
    static final class Writer extends StdSerializer<JsonText> {

        private static final long serialVersionUID = 1;

        Writer() {
            super(JsonText.class);
        }

        @Override
        public void serialize(JsonText text, JsonGenerator generator, SerializerProvider provider) throws IOException {
            generator.writeRawValue(new String(text.utf8, StandardCharsets.UTF_8));
        }
    }
}
