package org.seamtally.wire;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's version, as the build wrote it down. */
public final class ProgramVersion {

    private static final String TEXT = read();

    private ProgramVersion() {}

    /** Such as {@code 0.1.0}. */
    public static String text() {
        return TEXT;
    }

    private static String read() {
        try (InputStream in = ProgramVersion.class.getResourceAsStream("version.properties")) {
            Properties properties = new Properties();
            properties.load(in);
            return properties.getProperty("version");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
