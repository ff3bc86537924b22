package org.seamtally.batch;

import java.io.IOException;
import org.seamtally.wire.JobSettings;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

/** Frames of a table, a joint a row. */
final class CsvFrames {

    private CsvFrames() {}

    static JobFrames open(ByteSource source, JobSettings settings) throws IOException, RefusedException {
        throw FirstBytes.refused(Violation.Key.NOT_THIS_FORM, "tables are not read yet");
    }
}
