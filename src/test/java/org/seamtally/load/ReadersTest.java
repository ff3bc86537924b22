package org.seamtally.load;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The inputs that are kept for the readers: those that a fuzzer starts from, and those that once showed something. */
class ReadersTest {

    private static final Path KEPT = Path.of("src", "test", "resources", "readers");

    @ParameterizedTest
    @EnumSource
    void keptInputsAreReadOrRefused(ReadersFuzz.Reader reader) throws IOException {
        List<Path> inputs;
        try (Stream<Path> files = Files.list(KEPT.resolve(reader.folder()))) {
            inputs = files.sorted().toList();
        }
        assertTrue(inputs.size() >= 5, inputs.toString());
        for (Path input : inputs) {
            try {
                reader.read(Files.readAllBytes(input));
            } catch (AssertionError | RuntimeException e) {
                throw new AssertionError(input.toString(), e);
            }
        }
    }
}
