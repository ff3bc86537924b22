package org.seamtally.cli;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import org.seamtally.wire.EngineAnswer;

/**
 * What results were made from: it stands beside a result file until that is whole. Results are only gone on with from the
 * same again, so that the whole is what one run would have written.
 *
 * @param input SHA-256 of the job file, hexadecimal
 * @param inputForm word of the job file's form
 * @param settings SHA-256 of the settings, hexadecimal; null where there are none
 * @param format word of the results' form
 * @param units word of the units of the results
 * @param engine that computes
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record ResultOrigin(String input, String inputForm, String settings, String format, String units, EngineAnswer engine) {

    /** What of the results was made otherwise, in words; empty where nothing was. */
    Optional<String> difference(ResultOrigin before) {
        if (!input.equals(before.input)) {
            return Optional.of("the job file is not the one that they were made from");
        }
        if (!Objects.equals(settings, before.settings)) {
            return Optional.of("the settings are not those that they were made with");
        }
        if (!inputForm.equals(before.inputForm)) {
            return Optional.of("the job file was read as " + before.inputForm);
        }
        if (!format.equals(before.format)) {
            return Optional.of("they are in the form " + before.format);
        }
        if (!units.equals(before.units)) {
            return Optional.of("they are in the units " + before.units);
        }
        if (!engine.equals(before.engine)) {
            return Optional.of("another version made them: " + before.engine.version() + ", catalogue "
                    + before.engine.catalogue());
        }
        return Optional.empty();
    }

    /** SHA-256 of a file, hexadecimal; the file is not held. */
    static String digest(Path file) throws IOException {
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            // a piece at a time; what is read goes through the digest
            byte[] piece = new byte[1 << 16];
            while (in.read(piece) >= 0) {}
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** SHA-256 of bytes, hexadecimal. */
    static String digest(byte[] bytes) {
        return HexFormat.of().formatHex(sha256().digest(bytes));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has it", e);
        }
    }
}
