package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;

/** A piece of JSON that puts itself into the library's own bytes, without a text of it being made. */
abstract class ByteText implements SerializableString {

    /** How many bytes it takes. */
    abstract int length();

    /** Puts its bytes, for which there is room. */
    abstract void put(byte[] buffer, int offset);

    @Override
    public final int appendUnquotedUTF8(byte[] buffer, int offset) {
        int length = length();
        if (length > buffer.length - offset) {
            return -1;
        }
        put(buffer, offset);
        return length;
    }

    @Override
    public final byte[] asUnquotedUTF8() {
        byte[] bytes = new byte[length()];
        put(bytes, 0);
        return bytes;
    }

    // the other ways of writing it are the library's, once there is a text

    private SerializedString text() {
        return new SerializedString(getValue());
    }

    @Override
    public final String getValue() {
        return new String(asUnquotedUTF8(), UTF_8);
    }

    @Override
    public final int charLength() {
        return text().charLength();
    }

    @Override
    public final char[] asQuotedChars() {
        return text().asQuotedChars();
    }

    @Override
    public final byte[] asQuotedUTF8() {
        return text().asQuotedUTF8();
    }

    @Override
    public final int appendQuotedUTF8(byte[] buffer, int offset) {
        return text().appendQuotedUTF8(buffer, offset);
    }

    @Override
    public final int appendQuoted(char[] buffer, int offset) {
        return text().appendQuoted(buffer, offset);
    }

    @Override
    public final int appendUnquoted(char[] buffer, int offset) {
        return text().appendUnquoted(buffer, offset);
    }

    @Override
    public final int writeQuotedUTF8(OutputStream out) throws IOException {
        return text().writeQuotedUTF8(out);
    }

    @Override
    public final int writeUnquotedUTF8(OutputStream out) throws IOException {
        return text().writeUnquotedUTF8(out);
    }

    @Override
    public final int putQuotedUTF8(ByteBuffer buffer) throws IOException {
        return text().putQuotedUTF8(buffer);
    }

    @Override
    public final int putUnquotedUTF8(ByteBuffer buffer) throws IOException {
        return text().putUnquotedUTF8(buffer);
    }
}
