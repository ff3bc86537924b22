package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.zip.ZipFile;
import org.seamtally.wire.Json;
import org.seamtally.wire.ProblemReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Fetches a copy of what a running service keeps in its embedded database. */
@Command(
        name = "backup",
        description = {
            "Copies what a running service keeps in its embedded database to a ZIP file; the service goes on meanwhile.",
            "To restore it, unzip it into the empty folder of the database, and start the service on it. PostgreSQL is"
                    + " copied by its own pg_dump."
        },
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            "0:the file is written and was read to its end once",
            "1:the service refused",
            "2:the service does not answer, or the file could not be written"
        },
        exitCodeOnExecutionException = BackupCommand.NOT_MADE,
        mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {

    /** Exit code: the service refused. */
    static final int REFUSED = FileCommand.REFUSED;
    /** Exit code: there is no backup. */
    static final int NOT_MADE = FileCommand.UNREADABLE;

    // the service reads its whole database before it begins to answer: some GiB of it, from a slow disk
    private static final Duration BEGINS_WITHIN = Duration.ofMinutes(30);

    @Spec
    private CommandSpec spec;

    @Option(names = "--to", required = true, paramLabel = "FILE", description = "Where the backup goes: a new file.")
    private Path to;

    @Option(
            names = "--service",
            paramLabel = "URL",
            defaultValue = "http://127.0.0.1:8080",
            description = "The service; ${DEFAULT-VALUE} unless said.")
    private URI service;

    @Option(
            names = "--token-file",
            paramLabel = "FILE",
            description = "A file with the bearer token to show, where the service asks for one; its role is operator.")
    private Path tokenFile;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter err = spec.commandLine().getErr();
        try {
            if (Files.exists(to)) {
                throw new FileAlreadyExistsException(to.toString(), null, "is there already: a new file is taken");
            }
            return fetch(err);
        } catch (ConnectException e) {
            err.println(service + ": no service answers there");
        } catch (FileAlreadyExistsException e) {
            err.println(e.getMessage());
        } catch (IOException e) {
            err.println("no backup was made: " + Faults.words(e));
        } finally {
            err.flush();
        }
        return NOT_MADE;
    }

    private int fetch(PrintWriter err) throws IOException, InterruptedException {
        HttpClient http = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .connectTimeout(Duration.ofSeconds(10))
                .build();
        HttpResponse<InputStream> answer = http.send(request(), HttpResponse.BodyHandlers.ofInputStream());
        try (InputStream body = answer.body()) {
            if (answer.statusCode() != 200) {
                tellRefusal(answer, body, err);
                return REFUSED;
            }
            // made for its owner alone, as all files of that kind: it holds prices
            Path part = Files.createTempFile(to.toAbsolutePath().getParent(), to.getFileName() + ".", ".part");
            try {
                write(body, part);
                readToItsEnd(part);
                Files.move(part, to);
            } finally {
                Files.deleteIfExists(part);
            }
        }
        err.println(to + ": " + Files.size(to) + " bytes");
        return 0;
    }

    private HttpRequest request() throws IOException {
        HttpRequest.Builder request = HttpRequest.newBuilder(service.resolve("/q/backup"))
                .POST(HttpRequest.BodyPublishers.noBody())
                .timeout(BEGINS_WITHIN);
        return (tokenFile == null
                        ? request
                        : request.header(
                                "Authorization",
                                "Bearer " + Files.readString(tokenFile).strip()))
                .build();
    }

    private void tellRefusal(HttpResponse<?> answer, InputStream body, PrintWriter err) throws IOException {
        if (answer.headers().firstValue("Content-Type").orElse("").startsWith("application/problem+json")) {
            ProblemReport problem = Json.mapper().readValue(body, ProblemReport.class);
            err.println(problem.title() + (problem.detail() == null ? "" : " " + problem.detail()));
        } else {
            err.println(service + ": answered " + answer.statusCode());
        }
    }

    private static void write(InputStream body, Path part) throws IOException {
        try (FileChannel file = FileChannel.open(part, StandardOpenOption.WRITE)) {
            body.transferTo(Channels.newOutputStream(file));
            file.force(true);
        }
    }

    /** Every part of the copy against its check sum: what was cut on its way is no backup. */
    private static void readToItsEnd(Path zip) throws IOException {
        try (ZipFile file = new ZipFile(zip.toFile())) {
            if (file.size() == 0) {
                throw new IOException("the copy is empty");
            }
            for (var entry : file.stream().toList()) {
                try (InputStream content = file.getInputStream(entry)) {
                    content.transferTo(OutputStream.nullOutputStream());
                }
            }
        }
    }
}
