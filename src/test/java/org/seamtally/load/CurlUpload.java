package org.seamtally.load;

import java.io.IOException;
import java.nio.file.Path;
import org.seamtally.batch.Form;

/** A job file sent by curl, which reads answers while it sends. */
final class CurlUpload {

    private CurlUpload() {}

    /** Sends the file as one body and writes what is answered, while both go on; the process ends with curl's own code. */
    static Process send(Path jobs, Form form, String url, Path answer) throws IOException {
        return new ProcessBuilder(
                        "curl",
                        "--silent",
                        "--show-error",
                        "--fail-with-body",
                        "--request",
                        "POST",
                        "--upload-file",
                        "-",
                        "--header",
                        "Content-Type: " + (form == Form.CSV ? "text/csv" : "application/x-ndjson"),
                        "--header",
                        "Expect:",
                        "--output",
                        answer.toString(),
                        url)
                .redirectInput(jobs.toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }
}
