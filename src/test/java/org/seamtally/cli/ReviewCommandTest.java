package org.seamtally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReviewCommandTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Main.commands()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(args);
    }

    @ParameterizedTest
    @CsvSource({
        "review-4130-three-fillers.json, si",
        "review-4130-three-fillers.json, us",
        "review-own-analysis.json, si",
        "review-own-analysis.json, us"
    })
    void theSamplesFitAPage(String file, String units) {
        assertEquals(0, run("review", "sample-jobs/" + file, "--units", units));
        for (String line : out.toString().lines().toList()) {
            assertTrue(line.length() <= 100, line);
        }
    }

    /** Common practice, no source: the low-carbon rod without preheat comes first for thin normalized 4130. */
    @Test
    void saysFirstWhatToTakeAndWhy() {
        assertEquals(0, run("review", "sample-jobs/review-4130-three-fillers.json"));
        List<String> lines = out.toString().lines().toList();
        assertEquals("Take ER70S-2, no preheat.", lines.get(3));
        assertTrue(out.toString().contains("2. ER80S-B2, preheat to 150 degC, cautioned for cracking."));
        assertTrue(out.toString().contains("* outside its range:"));
        assertTrue(out.toString().contains("No load was considered"));
    }

    @Test
    void asCsvAFillerIsALine() {
        assertEquals(0, run("review", "sample-jobs/review-4130-three-fillers.json", "--format", "csv"));
        List<String> lines = out.toString().lines().toList();
        assertEquals(4, lines.size());
        assertTrue(lines.get(0).startsWith("filler,rank,cautioned for cracking,preheat,"));
        assertTrue(lines.get(1).startsWith("ER70S-2,1,no,none,,"));
        assertEquals(14, lines.get(0).replaceAll("\"[^\"]*\"", "x").split(",", -1).length);
    }

    @Test
    void whatIsWrongIsSaid(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("r.json"), "{\"wall\": \"2 mm\", \"fillers\": [{\"Mn\": 1}]}");
        assertEquals(FileCommand.REFUSED, run("review", file.toString()));
        assertTrue(err.toString().contains("fillers[0].C: an analysis of a steel names its carbon"), err.toString());
    }
}
