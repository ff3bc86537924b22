package org.seamtally.batch;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobSettings;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/** Frames of a file with a request a line. */
final class NdjsonFrames implements JobFrames {

    private final ByteSource source;
    private final JobSettings settings;
    // with room for the carriage return of a line that is just as long as it may be
    private final CutBytes line = new CutBytes(JobFiles.LONGEST_LINE + 1);
    private final CharsetDecoder decoder = StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    private final CharBuffer letters = CharBuffer.allocate(1024);
    private long number;

    NdjsonFrames(ByteSource source, JobSettings settings) {
        this.source = source;
        this.settings = settings;
    }

    @Override
    public JobFrame next() throws IOException {
        while (source.isMore()) {
            line.clear();
            number++;
            boolean ended = false;
            while (!ended && source.isMore()) {
                ended = source.takeLine(line);
            }
            JobFrame frame = frame();
            if (frame != null) {
                return frame;
            }
        }
        return null;
    }

    private JobFrame frame() {
        if (line.isCut()) {
            return tooLong();
        }
        int length = (int) line.length();
        if (length > 0 && line.at(length - 1) == '\r') {
            length--;
        }
        boolean blank = true;
        boolean ascii = true;
        boolean nul = false;
        boolean carriageReturn = false;
        for (int i = 0; i < length; i++) {
            int value = line.at(i);
            blank &= value == ' ' || value == '\t';
            ascii &= value < 0x80;
            nul |= value == 0;
            carriageReturn |= value == '\r';
        }
        if (blank) {
            return null;
        }
        if (length > JobFiles.LONGEST_LINE) {
            return tooLong();
        }
        byte[] request = line.first(length);
        if (nul || !ascii && !isUtf8(request)) {
            return refused(Violation.Key.NOT_UTF_8, "the line is not UTF-8");
        }
        if (carriageReturn) {
            return refused(
                    Violation.Key.LINE_ENDS,
                    "a carriage return without a line feed stands in the line: lines end with LF or CR LF");
        }
        return new JobFrame(number, settings.into(request), null, null);
    }

    private boolean isUtf8(byte[] bytes) {
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        decoder.reset();
        while (true) {
            letters.clear();
            var result = decoder.decode(rest, letters, true);
            if (!result.isOverflow()) {
                return result.isUnderflow();
            }
        }
    }

    private JobFrame tooLong() {
        return refused(
                Violation.Key.TOO_LONG,
                "a line of " + line.length() + " bytes: at most " + JobFiles.LONGEST_LINE + " are read");
    }

    private JobFrame refused(String key, String message) {
        Violation violation = new Violation("", key, message, null, null);
        return new JobFrame(number, null, null, ProblemReport.invalid(List.of(violation)));
    }
}
