package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the library's own writing. */
class FigureWriterTest {

    private static final long SEED = 20261125;

    private final ObjectMapper library = new ObjectMapper();

    @Test
    void numbersAreWrittenAsTheLibraryWritesThem() throws JsonProcessingException {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 300_000; i++) {
            double value = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(-5, 10));
            // few digits, nine digits, all digits
            same(i % 3 == 0 ? Shown.number(value) : i % 3 == 1 ? Math.rint(value * 100) / 100 : value);
        }
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {
                0,
                -0.0,
                1,
                -1,
                0.1,
                10,
                0.001,
                0.00099999,
                9999999.9,
                1e7,
                1e-300,
                1e300,
                0.123456789,
                1.5e-3,
                999.999999
            })
    void endsOfTheRangeToo(double value) throws JsonProcessingException {
        same(value);
    }

    @Test
    void aQuantityIsItsNumberAndItsUnit() throws JsonProcessingException {
        Quantity quantity = new Quantity(175.913711, "mm");
        assertEquals("{\"value\":175.913711,\"unit\":\"mm\"}", Json.mapper().writeValueAsString(quantity));
    }

    @Test
    void quantitiesAreWrittenAsTheLibraryWritesThem() throws JsonProcessingException {
        SplittableRandom random = new SplittableRandom(SEED);
        List<String> units =
                Arrays.asList("mm", "ft³/h", "°C", "%", "µm", "\"", "a\\b", "\n", "\ud83d\udd27", "", null);
        for (int i = 0; i < 100_000; i++) {
            double value = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(-5, 10));
            double written = i % 2 == 0 ? Shown.number(value) : value;
            List<Quantity> both = List.of(
                    new Quantity(written, units.get(random.nextInt(units.size()))), new Quantity(-written, "in"));
            assertEquals(
                    new String(library.writeValueAsBytes(both), UTF_8),
                    new String(Json.bytes(both), UTF_8),
                    "seed " + SEED);
        }
    }

    @Test
    void quantitiesAreSetOutWhereTheRestIs() throws JsonProcessingException {
        List<Quantity> one = List.of(new Quantity(1.5, "mm"));
        assertEquals(
                library.writerWithDefaultPrettyPrinter().writeValueAsString(one),
                new String(Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsBytes(one), UTF_8));
    }

    private void same(double value) throws JsonProcessingException {
        List<Double> both = List.of(value, -value);
        assertEquals(library.writeValueAsString(both), new String(Json.bytes(both)), "seed " + SEED);
    }
}
