package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.json.UTF8JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Writes numbers and quantities, of which an answer has hundreds, as the library would, and quicker: a number of at most
 * nine digits needs no search for the shortest decimal that is this double, and is put into the generator's own bytes as
 * it stands, with what a quantity has around it.
 */
final class FigureWriter {

    private static final SerializableString VALUE = new SerializedString("value");
    private static final SerializableString UNIT = new SerializedString("unit");

    private static final byte[] NOTHING = {};
    private static final byte[] TO_NUMBER = "{\"value\":".getBytes(UTF_8);

    /** What follows a quantity's number, by its unit: as many as {@code Dimension} has. */
    private static final Map<String, byte[]> FROM_NUMBER = new ConcurrentHashMap<>();

    private static final int DIGITS = 9;

    // from here on, and up to there, the language writes no exponent
    private static final double LEAST = 1e-3;
    private static final double GREATEST = 1e7;

    private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11};

    private FigureWriter() {}

    static SimpleModule addTo(SimpleModule module) {
        return module.addSerializer(Double.class, new OfNumber())
                .addSerializer(double.class, new OfNumber())
                .addSerializer(Quantity.class, new OfQuantity());
    }

    private static final class OfNumber extends StdSerializer<Double> {

        private static final long serialVersionUID = 1;

        OfNumber() {
            super(Double.class);
        }

        @Override
        public void serialize(Double value, JsonGenerator generator, SerializerProvider provider) throws IOException {
            if (!put(NOTHING, value, NOTHING, generator)) {
                generator.writeNumber(value);
            }
        }
    }

    private static final class OfQuantity extends StdSerializer<Quantity> {

        private static final long serialVersionUID = 1;

        OfQuantity() {
            super(Quantity.class);
        }

        @Override
        public void serialize(Quantity quantity, JsonGenerator generator, SerializerProvider provider)
                throws IOException {
            String unit = quantity.unit();
            if (unit != null && put(TO_NUMBER, quantity.value(), fromNumber(unit), generator)) {
                return;
            }
            generator.writeStartObject();
            generator.writeFieldName(VALUE);
            generator.writeNumber(quantity.value());
            generator.writeFieldName(UNIT);
            generator.writeString(unit);
            generator.writeEndObject();
        }
    }

    private static byte[] fromNumber(String unit) {
        byte[] known = FROM_NUMBER.get(unit);
        return known == null ? FROM_NUMBER.computeIfAbsent(unit, FigureWriter::written) : known;
    }

    private static byte[] written(String unit) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonGenerator generator = new JsonFactory().createGenerator(out)) {
            generator.writeStartObject();
            generator.writeStringField(UNIT.getValue(), unit);
            generator.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be written", e);
        }
        byte[] object = out.toByteArray();
        object[0] = ',';
        return object;
    }

    /**
     * Puts a number with what stands around it.
     *
     * @return whether it did: not where the number has more digits, or where the generator makes something else than bytes
     *     without blanks
     */
    private static boolean put(byte[] before, double value, byte[] after, JsonGenerator generator) throws IOException {
        double size = Math.abs(value);
        if (!(size >= LEAST && size < GREATEST)
                || !(generator instanceof UTF8JsonGenerator)
                || generator.getPrettyPrinter() != null) {
            return false;
        }
        int decimals = decimals(size);
        double digits = Math.rint(size * POWERS[decimals]);
        // both exact, so that the quotient is the double that this decimal stands for; none so short has another
        if (digits / POWERS[decimals] != size) {
            return false;
        }
        generator.writeRawValue(new Figure(before, value < 0, (int) digits, decimals, after));
        return true;
    }

    /** Decimals that nine digits leave. */
    private static int decimals(double size) {
        int whole = 0;
        while (size >= POWERS[whole]) {
            whole++;
        }
        if (whole > 0) {
            return DIGITS - whole;
        }
        return size >= 0.1 ? DIGITS : size >= 0.01 ? DIGITS + 1 : DIGITS + 2;
    }

    /** A number with what stands around it. */
    private static final class Figure extends ByteText {

        private static final int[] TENS = {
            1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000
        };

        private final byte[] before;
        private final boolean negative;
        private final int whole;
        private final int wholeDigits;
        private final int part;
        private final int partDigits;
        private final byte[] after;

        Figure(byte[] before, boolean negative, int digits, int decimals, byte[] after) {
            this.before = before;
            this.negative = negative;
            this.after = after;
            // more decimals than an int has: none before the point
            whole = decimals > DIGITS ? 0 : digits / TENS[decimals];
            int count = 1;
            while (count < TENS.length && whole >= TENS[count]) {
                count++;
            }
            wholeDigits = count;
            int rest = decimals > DIGITS ? digits : digits - whole * TENS[decimals];
            int left = decimals;
            // at least one, and no noughts at the end
            if (rest == 0) {
                left = 1;
            } else {
                while (rest % 1000 == 0) {
                    rest /= 1000;
                    left -= 3;
                }
                while (rest % 10 == 0) {
                    rest /= 10;
                    left--;
                }
            }
            part = rest;
            partDigits = left;
        }

        @Override
        int length() {
            return before.length + (negative ? 1 : 0) + wholeDigits + 1 + partDigits + after.length;
        }

        @Override
        void put(byte[] buffer, int offset) {
            System.arraycopy(before, 0, buffer, offset, before.length);
            int at = offset + before.length;
            if (negative) {
                buffer[at++] = '-';
            }
            digits(buffer, at, wholeDigits, whole);
            at += wholeDigits;
            buffer[at++] = '.';
            digits(buffer, at, partDigits, part);
            System.arraycopy(after, 0, buffer, at + partDigits, after.length);
        }

        private static void digits(byte[] buffer, int start, int count, int number) {
            int rest = number;
            for (int at = start + count - 1; at >= start; at--) {
                buffer[at] = (byte) ('0' + rest % 10);
                rest /= 10;
            }
        }
    }
}
