package org.seamtally.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The catalogue as a whole: which tables it has, and a name for their state. */
public final class Catalogue {

    /** The one list of the tables. */
    static final List<String> TABLES =
            List.of("steels.csv", "fillers.csv", "gas-species.csv", "shielding-gases.csv", "fuels.csv", "tubes.csv");

    // 48 bits tell apart any two states this catalogue will ever have, and still fit on a printed quote
    private static final int VERSION_BYTES = 6;

    private static final String VERSION = digest(contents());

    private Catalogue() {}

    /**
     * Names the state of the tables: where two answers carry the same version, they were computed from the same
     * figures.
     *
     * @return 12 hexadecimal digits, the start of a SHA-256 over every table
     */
    public static String version() {
        return VERSION;
    }

    /** Each table's name and length go in before its bytes, so that moving a row between tables shows. */
    static String digest(Map<String, byte[]> tables) {
        try {
            MessageDigest sha256 = MessageDigest.getInstance("SHA-256");
            new TreeMap<>(tables).forEach((name, bytes) -> {
                sha256.update(name.getBytes(StandardCharsets.UTF_8));
                sha256.update(ByteBuffer.allocate(Long.BYTES).putLong(0, bytes.length));
                sha256.update(bytes);
            });
            return HexFormat.of().formatHex(sha256.digest(), 0, VERSION_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static Map<String, byte[]> contents() {
        Map<String, byte[]> contents = new TreeMap<>();
        for (String table : TABLES) {
            try (InputStream in = Catalogue.class.getResourceAsStream(table)) {
                if (in == null) {
                    throw new IllegalStateException("the catalogue lacks " + table);
                }
                contents.put(table, in.readAllBytes());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return contents;
    }
}
