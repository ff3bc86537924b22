package org.seamtally.batch;

import java.io.IOException;
import java.io.InputStream;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobSettings;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

/** Reads job files of either form, frame by frame. */
public final class JobFiles {

    /**
     * Bytes of one frame: of its line, or of its rows together. A frame of five thousand joints fits; and as one frame is
     * held at a time, this is what bounds the memory that a file can take.
     */
    public static final int LONGEST_LINE = 1 << 20;

    private JobFiles() {}

    /**
     * Begins to read.
     *
     * @param in the file, which is read as far as its first frame and is not closed here
     * @param settings for all its frames, as JSON; null for none
     * @throws RefusedException where nothing can be made of the file, or of the settings
     * @throws IOException where the file could not be fetched
     */
    public static JobFrames open(InputStream in, Form form, byte[] settings) throws IOException, RefusedException {
        JobSettings shop = settings == null ? JobSettings.NONE : JobSettings.read(settings);
        ByteSource source = new ByteSource(in);
        JobFrames frames = form == Form.NDJSON ? new NdjsonFrames(source, shop) : CsvFrames.open(source, shop);
        JobFrame first = frames.next();
        if (first == null) {
            throw FirstBytes.refused(Violation.Key.EMPTY, "there is no frame in this file");
        }
        return new Begun(first, frames);
    }

    /** Frames of which the first has been looked at. */
    private static final class Begun implements JobFrames {

        private JobFrame first;
        private final JobFrames rest;

        Begun(JobFrame first, JobFrames rest) {
            this.first = first;
            this.rest = rest;
        }

        @Override
        public JobFrame next() throws IOException {
            if (first == null) {
                return rest.next();
            }
            JobFrame next = first;
            first = null;
            return next;
        }
    }
}
