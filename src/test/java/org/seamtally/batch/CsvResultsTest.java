package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.FrameColumns;
import org.seamtally.wire.JobLine;

/** Read again by the library's reader. */
class CsvResultsTest {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    private List<CSVRecord> records() throws Exception {
        return CSVFormat.RFC4180
                .parse(new StringReader(out.toString(StandardCharsets.UTF_8)))
                .getRecords();
    }

    private static List<JobLine> lines() throws Exception {
        return Jobs.SI.on(Jobs.frames(Jobs.ndjson(11, 12)));
    }

    private static int write(ResultSink sink) throws Exception {
        Counts counts = Counts.NONE;
        for (JobLine line : lines()) {
            sink.line(line.json());
            counts = counts.plus(Counts.of(line));
        }
        sink.end(counts, true);
        return (int) counts.read();
    }

    @Test
    void theHeaderStandsOnceThenARecordAFrameThenTheTrailer() throws Exception {
        int frames = write(new CsvResults(out, UnitSystem.SI));
        List<CSVRecord> records = records();
        assertEquals(1 + frames + 1, records.size());
        assertEquals(new FrameColumns(UnitSystem.SI).header(), records.get(0).toList());
        int line = records.get(0).toList().indexOf("line");
        List<JobLine> lines = lines();
        for (int i = 0; i < frames; i++) {
            assertEquals(Long.toString(lines.get(i).line()), records.get(1 + i).get(line));
            assertEquals(records.get(0).size(), records.get(1 + i).size());
        }
    }

    @Test
    void aTableThatIsGoneOnWithGetsNoSecondHeader() throws Exception {
        int frames = write(new CsvResults(out, UnitSystem.SI, true));
        assertEquals(frames + 1, records().size());
    }

    @Test
    void aTableOfNoFrameHasItsHeaderAndItsTrailer() throws Exception {
        new CsvResults(out, UnitSystem.US).end(Counts.NONE, false);
        assertEquals(2, records().size());
        assertEquals(
                new FrameColumns(UnitSystem.US).header().size(),
                records().get(0).size());
    }

    @Test
    void whatWasWrittenIsSeenOnceItIsFlushed() throws Exception {
        CsvResults sink = new CsvResults(out, UnitSystem.SI);
        sink.line(lines().get(0).json());
        assertEquals(0, out.size());
        sink.flush();
        assertEquals(2, records().size());
    }
}
