package org.seamtally.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.seamtally.batch.BatchRun;
import org.seamtally.batch.Counts;
import org.seamtally.batch.CsvResults;
import org.seamtally.batch.Form;
import org.seamtally.batch.JobFiles;
import org.seamtally.batch.JobFrames;
import org.seamtally.batch.NdjsonResults;
import org.seamtally.batch.ResultSink;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.RefusedException;

/**
 * A job file worked through into a file of results.
 *
 * @param workers frames worked on at a time
 */
record BatchToFile(
        JobSource source, Path out, Form format, UnitSystem units, int workers, Engine engine, Looker looker) {

    /**
     * How a run ended.
     *
     * @param before whether the results were whole before it
     */
    record Ended(Counts counts, boolean before) {}

    /** Somebody who looks on. */
    @FunctionalInterface
    interface Looker {

        /** Nobody. */
        Looker NOBODY = (size, bytes, before) -> new Look() {};

        /**
         * The run begins.
         *
         * @param size of the job file in bytes; 0 where nobody knows
         * @param bytes of it that are read so far
         * @param before frames that have their results already
         */
        Look begins(long size, LongSupplier bytes, long before);
    }

    /** What somebody who looks on is shown. */
    interface Look {

        /** @param frames that have their results, those from before among them */
        default void at(long frames) {}

        /** The run is over. */
        default void ends() {}
    }

    /** Works through the file from its beginning. */
    Ended begin() throws IOException, RefusedException, NotBegunException {
        ResultFile.refuseIfThere(out);
        Optional<ResultOrigin> origin = source.isStream() ? Optional.empty() : Optional.of(origin());
        try (CountedInput in = source.open()) {
            // a file that is refused as a whole leaves nothing behind
            JobFrames frames = JobFiles.open(in, source.form(), source.settings());
            try (ResultFile results = ResultFile.create(out, origin)) {
                return new Ended(write(in, frames, results, WrittenResults.NONE), false);
            }
        }
    }

    /** Goes on where an earlier run was cut; from the beginning where there are no results. */
    Ended resume() throws IOException, RefusedException, NotBegunException {
        if (!Files.exists(out)) {
            return begin();
        }
        Optional<ResultOrigin> origin = ResultFile.origin(out);
        Optional<String> difference = origin.isEmpty() ? Optional.empty() : origin().difference(origin.get());
        if (difference.isPresent()) {
            throw new NotBegunException(out + " is not gone on with: " + difference.get());
        }
        try (ResultFile results = ResultFile.reopen(out)) {
            WrittenResults written = written(results);
            if (written.complete()) {
                results.whole();
                return new Ended(written.counts(), true);
            }
            if (origin.isEmpty()) {
                throw new NotBegunException(out + " is not gone on with: nothing beside it says what it was made from");
            }
            try (CountedInput in = source.open()) {
                JobFrames frames = JobFiles.open(in, source.form(), source.settings());
                pass(frames, written);
                return new Ended(write(in, frames, results, written), false);
            }
        }
    }

    private WrittenResults written(ResultFile results) throws IOException, NotBegunException {
        try {
            return WrittenResults.read(results.written(), format);
        } catch (NotBegunException e) {
            throw new NotBegunException(out + " is not gone on with: " + e.getMessage());
        }
    }

    /** Passes over the frames that have their results. */
    private void pass(JobFrames frames, WrittenResults written) throws IOException, NotBegunException {
        long line = 0;
        for (long i = 0; i < written.counts().read(); i++) {
            JobFrame frame = frames.next();
            line = frame == null ? -1 : frame.line();
        }
        if (line != written.lastLine()) {
            throw new NotBegunException(out + " is not gone on with: its lines are not those of the job file");
        }
    }

    private Counts write(CountedInput in, JobFrames frames, ResultFile results, WrittenResults written)
            throws IOException {
        long before = written.counts().read();
        OutputStream to = results.from(written.end());
        ResultSink sink = format == Form.CSV ? new CsvResults(to, units, written.end() > 0) : new NdjsonResults(to);
        Look look = looker.begins(source.size(), in::bytes, before);
        try {
            Counts counts = BatchRun.run(
                    source.isStream() ? frames : frames.atHand(),
                    group -> engine.jobLines(group, units),
                    workers,
                    new MoreResults(sink, written.counts()),
                    soFar -> look.at(before + soFar.read()));
            results.whole();
            return counts.plus(written.counts());
        } catch (IOException e) {
            String next = source.isStream() ? "" : "; go on with it by --resume";
            throw new IOException(out + " is not whole: " + Faults.words(e) + next, e);
        } finally {
            look.ends();
        }
    }

    private ResultOrigin origin() throws IOException {
        return new ResultOrigin(
                ResultOrigin.digest(source.file()),
                source.form().name().toLowerCase(Locale.ROOT),
                source.settings() == null ? null : ResultOrigin.digest(source.settings()),
                format.name().toLowerCase(Locale.ROOT),
                units.word(),
                engine.identity());
    }
}
