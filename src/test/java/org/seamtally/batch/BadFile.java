package org.seamtally.batch;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.seamtally.wire.Violation;

/** Job files with something wrong about them, for every way in: each is refused as a whole, or by its frames. */
public enum BadFile {
    EMPTY_LINES(Form.NDJSON, "", Violation.Key.EMPTY),
    BLANK_LINES(Form.NDJSON, "\n \r\n", Violation.Key.EMPTY),
    EMPTY_TABLE(Form.CSV, "", Violation.Key.EMPTY),
    HEADER_ONLY(Form.CSV, Text.HEADER, Violation.Key.EMPTY),
    HEADER_WRONG(Form.CSV, "frame,kind,hole diametre [mm]\nA,plug,8\n", Violation.Key.UNKNOWN_FIELD),
    COMPRESSED_LINES(Form.NDJSON, new byte[] {0x1f, (byte) 0x8b, 8, 0, 0, 0}, Violation.Key.NOT_THIS_FORM),
    ZEROS(Form.NDJSON, new byte[64], Violation.Key.NOT_THIS_FORM),
    WORKBOOK(Form.CSV, new byte[] {'P', 'K', 3, 4, 20, 0}, Violation.Key.NOT_THIS_FORM),
    WIDE_LINES(Form.NDJSON, bytes(Text.LINE, StandardCharsets.UTF_16), Violation.Key.NOT_THIS_FORM),
    WIDE_TABLE(Form.CSV, bytes(Text.HEADER + "A" + Text.ROW, StandardCharsets.UTF_16LE), Violation.Key.NOT_THIS_FORM),
    LATIN_LINE(
            Form.NDJSON,
            bytes(Text.LINE + Text.LINE.replace("gate", "Tr\u00e4ger") + Text.LINE, StandardCharsets.ISO_8859_1),
            2,
            1,
            Violation.Key.NOT_UTF_8),
    LATIN_ROW(
            Form.CSV,
            bytes(
                    Text.HEADER + "A" + Text.ROW + "Tr\u00e4ger" + Text.ROW + "C" + Text.ROW,
                    StandardCharsets.ISO_8859_1),
            2,
            1,
            Violation.Key.NOT_UTF_8),
    HALF_A_LINE(Form.NDJSON, Text.LINE + Text.LINE.substring(0, 40), 1, 1, Violation.Key.NOT_JSON),
    HALF_A_ROW(Form.CSV, Text.HEADER + "A" + Text.ROW + "B,plu", 1, 1, Violation.Key.CELLS),
    QUOTE_NEVER_CLOSED(
            Form.CSV, Text.HEADER + "A" + Text.ROW + "B,\"plug,8,3\nC" + Text.ROW, 1, 1, Violation.Key.QUOTES),
    LINE_TOO_LONG(
            Form.NDJSON,
            Text.LINE + "{\"x\":\"" + "x".repeat(JobFiles.LONGEST_LINE) + "\"}\n" + Text.LINE,
            2,
            1,
            Violation.Key.TOO_LONG),
    BARE_RETURN(Form.NDJSON, Text.LINE.strip() + "\r" + Text.LINE + Text.LINE, 1, 1, Violation.Key.LINE_ENDS),
    /** Nothing is wrong with these two. */
    LINES_ENDED_EITHER_WAY(Form.NDJSON, Text.LINE + Text.LINE.replace("\n", "\r\n") + Text.LINE.strip(), 3, 0, null),
    ROWS_ENDED_ANY_WAY(
            Form.CSV,
            Text.HEADER + "A" + Text.ROW.replace("\n", "\r\n") + "B" + Text.ROW.replace("\n", "\r") + "C" + Text.ROW,
            3,
            0,
            null);

    private final Form form;
    private final byte[] bytes;
    private final int done;
    private final int refused;
    private final String key;

    BadFile(Form form, byte[] bytes, int done, int refused, String key) {
        this.form = form;
        this.bytes = bytes;
        this.done = done;
        this.refused = refused;
        this.key = key;
    }

    BadFile(Form form, String text, int done, int refused, String key) {
        this(form, bytes(text, StandardCharsets.UTF_8), done, refused, key);
    }

    BadFile(Form form, byte[] bytes, String key) {
        this(form, bytes, 0, 0, key);
    }

    BadFile(Form form, String text, String key) {
        this(form, text, 0, 0, key);
    }

    private static byte[] bytes(String text, Charset charset) {
        return text.getBytes(charset);
    }

    private static final class Text {
        static final String LINE = "{\"frame\": {\"name\": \"gate\", \"joints\": [{\"kind\": \"plug\","
                + " \"holeDiameter\": \"8 mm\", \"depth\": \"3 mm\"}]}}\n";
        static final String HEADER = "frame,kind,hole diameter [mm],depth [mm]\n";
        static final String ROW = ",plug,8,3\n";
    }

    public Form form() {
        return form;
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    /** Whether nothing can be made of it at all. */
    public boolean isRefusedWhole() {
        return done + refused == 0;
    }

    /** Frames that are estimated all the same. */
    public int done() {
        return done;
    }

    /** Frames that are refused. */
    public int refused() {
        return refused;
    }

    /** What is wrong, the key of the first violation; null for nothing. */
    public String key() {
        return key;
    }
}
