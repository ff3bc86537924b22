package org.seamtally.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Asks a running service for a copy of what it keeps: it opens no database itself. */
@Command(
        name = "backup",
        description = "Copies all that a running service keeps in the embedded database into a file.",
        mixinStandardHelpOptions = true)
final class BackupCommand implements Callable<Integer> {

    private static final int NOT_DONE = 2;

    private static final FileAttribute<?>[] OWNER_ALONE =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                    ? new FileAttribute<?>[] {
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                    }
                    : new FileAttribute<?>[0];

    private static final Duration CONNECT = Duration.ofSeconds(10);

    @Parameters(paramLabel = "FILE", description = "The copy; one that is there already is left alone.")
    private Path file;

    @Option(
            names = "--service",
            paramLabel = "URL",
            defaultValue = "http://127.0.0.1:8080",
            description = "Where the service is; ${DEFAULT-VALUE} unless said.")
    private URI service;

    @Option(
            names = "--token-file",
            paramLabel = "FILE",
            description = "Holds a token with the role operator, where the service asks for one.")
    private Path token;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter errors = spec.commandLine().getErr();
        try {
            if (Files.exists(file)) {
                errors.println(file + " is there already");
                return NOT_DONE;
            }
            return fetch(errors);
        } catch (ConnectException e) {
            errors.println("no service answers at " + service);
        } catch (IOException e) {
            errors.println(Faults.words(e));
        }
        return NOT_DONE;
    }

    /** Under another name until it is whole. */
    private int fetch(PrintWriter errors) throws IOException, InterruptedException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        HttpRequest.Builder request = HttpRequest.newBuilder(service.resolve("/v1/backup"));
        if (token != null) {
            request.header("Authorization", "Bearer " + Files.readString(token).strip());
        }
        HttpClient client = HttpClient.newBuilder().connectTimeout(CONNECT).build();
        // prices are in it
        Files.deleteIfExists(part);
        Files.createFile(part, OWNER_ALONE);
        try {
            HttpResponse<Path> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofFile(part));
            if (answer.statusCode() != 200) {
                errors.println(service + " answered " + answer.statusCode() + ": "
                        + Files.readString(part, StandardCharsets.UTF_8));
                return NOT_DONE;
            }
            Files.move(part, file);
        } finally {
            Files.deleteIfExists(part);
        }
        spec.commandLine().getOut().println(file + ": " + Files.size(file) + " bytes");
        return CommandLine.ExitCode.OK;
    }
}
