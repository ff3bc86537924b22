package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;

/**
 * Writes numbers and quantities, of which an answer has hundreds, as the library would, and quicker: a number of at most
 * nine digits needs no search for the shortest decimal that is this double.
 */
final class FigureWriter {

    private static final SerializableString VALUE = new SerializedString("value");
    private static final SerializableString UNIT = new SerializedString("unit");

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
            write(value, generator);
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
            generator.writeStartObject();
            generator.writeFieldName(VALUE);
            write(quantity.value(), generator);
            generator.writeFieldName(UNIT);
            generator.writeString(quantity.unit());
            generator.writeEndObject();
        }
    }

    private static void write(double value, JsonGenerator generator) throws IOException {
        double size = Math.abs(value);
        if (size >= LEAST && size < GREATEST) {
            int decimals = decimals(size);
            double digits = Math.rint(size * POWERS[decimals]);
            // both exact, so that the quotient is the double that this decimal stands for; none so short has another
            if (digits / POWERS[decimals] == size) {
                char[] text = new char[DIGITS + 5];
                int start = backwards(text, (long) digits, decimals);
                if (value < 0) {
                    text[--start] = '-';
                }
                generator.writeNumber(text, start, text.length - start);
                return;
            }
        }
        generator.writeNumber(value);
    }

    /** Decimals that nine digits leave. */
    private static int decimals(double size) {
        int decimals = DIGITS + 2;
        for (double next = LEAST * 10; size >= next; next *= 10) {
            decimals--;
        }
        return decimals;
    }

    /**
     * Writes digits from the end on, at least one on either side of the point, no noughts at the end.
     *
     * @return where they start
     */
    private static int backwards(char[] text, long digits, int decimals) {
        long rest = digits;
        int left = decimals;
        while (left > 1 && rest % 10 == 0) {
            rest /= 10;
            left--;
        }
        int at = text.length;
        for (; left > 0; left--) {
            text[--at] = (char) ('0' + rest % 10);
            rest /= 10;
        }
        text[--at] = '.';
        do {
            text[--at] = (char) ('0' + rest % 10);
            rest /= 10;
        } while (rest > 0);
        return at;
    }
}
