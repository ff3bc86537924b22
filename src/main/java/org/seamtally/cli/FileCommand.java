package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.ProgramVersion;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/**
 * A command that reads a request from a file, as it would be posted, and prints the answer.
 *
 * @param <A> the answer
 */
abstract class FileCommand<A> implements Callable<Integer> {

    /** Exit code: the request was refused. */
    static final int REFUSED = 1;
    /** Exit code: the file could not be read. */
    static final int UNREADABLE = 2;

    /** How the answer is printed. */
    enum Format {
        TABLE,
        JSON,
        CSV
    }

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "The request, as JSON; - for standard input.")
    private Path file;

    @Option(
            names = "--units",
            paramLabel = "si|us",
            defaultValue = "si",
            description = "Units of the answer; si unless said.")
    private UnitSystem units;

    @Option(
            names = "--format",
            paramLabel = "table|json|csv",
            defaultValue = "table",
            description = "Form of the answer; a table unless said.")
    private Format format;

    abstract Outcome<A> answer(Engine engine, InputStream in, UnitSystem units) throws IOException;

    abstract void printTable(A answer, PrintWriter out);

    abstract void printCsv(A answer, PrintWriter out) throws IOException;

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Outcome<A> outcome;
        try (InputStream in = open()) {
            outcome = answer(new Engine(ProgramVersion.text()), in, units);
        } catch (NoSuchFileException e) {
            err.println(file + ": no such file");
            return UNREADABLE;
        } catch (IOException e) {
            err.println(file + ": cannot be read");
            return UNREADABLE;
        }
        if (outcome instanceof Outcome.Refused<A> refused) {
            ProblemLines.print(file, refused.problem(), err);
            return REFUSED;
        }
        A answer = ((Outcome.Answered<A>) outcome).answer();
        switch (format) {
            case JSON ->
                out.println(Json.mapper().writerWithDefaultPrettyPrinter().writeValueAsString(answer));
            case CSV -> printCsv(answer, out);
            case TABLE -> printTable(answer, out);
        }
        out.flush();
        return 0;
    }

    private InputStream open() throws IOException {
        return file.toString().equals("-") ? System.in : Files.newInputStream(file);
    }
}
