package org.seamtally;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.seamtally.wire.JobColumns;

/** The list of columns for readers is the one that is read by. {@code -Dreadme.refresh=true} writes it anew. */
class JobFilesPageTest {

    private static final Path PAGE = Path.of("docs", "job-files.md");

    @Test
    void pageListsEveryColumn() throws IOException {
        String columns = JobColumns.headers().stream()
                .map(header -> "- `" + header + "`\n")
                .collect(Collectors.joining());
        String page = """
                # Columns of a job table

                A row is a joint; rows of one `frame` stand together. `frame` and `kind` are needed, each kind of joint
                takes its own fields (`GET /v1/catalogue/joint-kinds` lists them with their ranges), and a cell that a
                kind has no field for stays empty. `quantity` stands in a frame's first row; its others repeat it or leave it empty. The unit
                in brackets is one of those that the column takes. `sample-jobs/open-orders.csv` is an example.

                """ + columns;
        if (Boolean.getBoolean("readme.refresh")) {
            Files.writeString(PAGE, page);
        }
        assertEquals(page, Files.readString(PAGE));
    }
}
