package org.seamtally.load;

import java.io.IOException;
import java.util.Locale;

/**
 * Where a coverage-guided fuzzer puts its bytes in: {@code load-tests/fuzz-readers}. It knows this method by its name alone,
 * so that the tests need no fuzzer; they put the kept inputs through the same readers.
 */
public final class ReadersFuzz {

    /** Which reader the bytes are for. */
    enum Reader {
        QUANTITY(Readers::quantity),
        TABLE(Readers::table),
        LINES(Readers::lines),
        JSON(Readers::json);

        private final Read read;

        Reader(Read read) {
            this.read = read;
        }

        void read(byte[] data) throws IOException {
            read.read(data);
        }

        /** Where its kept inputs are. */
        String folder() {
            return name().toLowerCase(Locale.ROOT);
        }

        private interface Read {
            void read(byte[] data) throws IOException;
        }
    }

    private static final Reader READER =
            Reader.valueOf(System.getProperty("reader", "quantity").toUpperCase(Locale.ROOT));

    private ReadersFuzz() {}

    /** Before any time is measured: what is read first sets up units and rules. */
    public static void fuzzerInitialize() throws IOException {
        for (Reader reader : Reader.values()) {
            reader.read(new byte[] {0, '1', ' ', 'm'});
        }
    }

    /** @param data made by the fuzzer */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        READER.read(data);
    }
}
