package org.seamtally.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.JobFiles;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.ProgramVersion;
import org.seamtally.wire.RefusedException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Estimates the frames of a job file, one line's fault its own. */
@Command(
        name = "batch",
        description = {
            "Estimates every frame of a job file: NDJSON with a request a line, or a table (CSV) with a joint a row.",
            "What cannot be estimated gets its problem in its place. The last line of the results counts them: without it"
                    + " the run was cut, and --resume goes on with it."
        },
        exitCodeListHeading = "%nExit code:%n",
        exitCodeList = {
            "0:every frame was estimated",
            "1:some frames were refused; the counts say how many",
            "2:the file, or an option, is not what is taken, or the run broke off"
        },
        // a fault of the program's own is no count of refused frames
        exitCodeOnExecutionException = BatchCommand.NOT_ENDED,
        mixinStandardHelpOptions = true)
final class BatchCommand implements Callable<Integer> {

    /** Exit code: some frames were refused. */
    static final int SOME_REFUSED = FileCommand.REFUSED;
    /** Exit code: not begun, or broken off. */
    static final int NOT_ENDED = FileCommand.UNREADABLE;

    // more threads than any machine of today has cores are a slip of the finger
    private static final int MOST_WORKERS = 256;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "The job file; - for standard input.")
    private Path file;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "Where the results go: a new file.")
    private Path out;

    @Option(
            names = "--input-form",
            paramLabel = "ndjson|csv",
            description = "Form of the job file, where its name does not end with .ndjson, .jsonl or .csv.")
    private Form inputForm;

    @Option(
            names = "--format",
            paramLabel = "ndjson|csv",
            defaultValue = "ndjson",
            description = "Form of the results; ndjson unless said.")
    private Form format;

    @Option(
            names = "--settings",
            paramLabel = "FILE",
            description = "A JSON object with steel, filler, arc, gas, preheat, labour, prices for all frames.")
    private Path settings;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "Frames worked on at a time; as many as the machine has processors unless said.")
    private Integer workers;

    @Option(
            names = "--units",
            paramLabel = "si|us",
            defaultValue = "si",
            description = "Units of the results; si unless said.")
    private UnitSystem units;

    @Option(
            names = "--resume",
            description = "Goes on with the results of a run that was cut. They are what one run would have written.")
    private boolean resume;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        // what is wrong with the options is told before anything is read
        Form form = form();
        int threads = threads();
        try {
            JobSource source = new JobSource(file, form, settings());
            if (resume && source.isStream()) {
                throw wrongOption("--resume reads the job file anew: it cannot be a stream");
            }
            Engine engine = new Engine(ProgramVersion.text());
            BatchToFile batch = new BatchToFile(source, out, format, units, threads, engine, looker(err));
            BatchToFile.Ended ended = resume ? batch.resume() : batch.begin();
            err.println(summary(ended));
            return ended.counts().refused() == 0 ? 0 : SOME_REFUSED;
        } catch (RefusedException e) {
            ProblemLines.print(file, e.problem(), err);
        } catch (NotBegunException e) {
            err.println(e.getMessage());
        } catch (IOException e) {
            err.println(Faults.words(e));
        } finally {
            err.flush();
        }
        return NOT_ENDED;
    }

    private BatchToFile.Looker looker(PrintWriter err) {
        return Terminal.isThere()
                ? (size, bytes, before) -> new ProgressBar(err, InstantSource.system(), size, bytes, before)
                : BatchToFile.Looker.NOBODY;
    }

    private String summary(BatchToFile.Ended ended) {
        Counts counts = ended.counts();
        return file + ": " + counts.read() + " frames read, " + counts.done() + " done, " + counts.refused()
                + " refused; the results are in " + out + (ended.before() ? ", which was complete already" : "");
    }

    private byte[] settings() throws IOException, NotBegunException {
        if (settings == null) {
            return null;
        }
        // they are part of every frame, and no longer than one may be
        if (Files.size(settings) > JobFiles.LONGEST_LINE) {
            throw new NotBegunException(settings + ": settings are at most " + JobFiles.LONGEST_LINE + " bytes long");
        }
        return Files.readAllBytes(settings);
    }

    private Form form() {
        if (inputForm != null) {
            return inputForm;
        }
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (name.endsWith(".csv")) {
            return Form.CSV;
        }
        if (name.endsWith(".ndjson") || name.endsWith(".jsonl")) {
            return Form.NDJSON;
        }
        throw wrongOption("the form of " + file + " does not show in its name: say --input-form ndjson or csv");
    }

    private int threads() {
        if (workers == null) {
            return Math.min(MOST_WORKERS, Runtime.getRuntime().availableProcessors());
        }
        if (workers < 1 || workers > MOST_WORKERS) {
            throw wrongOption("--workers: taken here: 1 to " + MOST_WORKERS);
        }
        return workers;
    }

    private ParameterException wrongOption(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
