package org.seamtally.batch;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/**
 * A chunk's frames as bytes and back: nothing of a frame is lost on the way. A version byte comes first, then, compressed
 * with DEFLATE (RFC 1950), each frame's line, and its request with its places or its problem.
 */
final class ChunkFrames {

    private static final int VERSION = 1;

    private static final int ABSENT = -1;

    private ChunkFrames() {}

    /** A chunk of the frames, in their order. */
    static Chunk written(List<JobFrame> frames) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.write(VERSION);
        try (DataOutputStream out = new DataOutputStream(new DeflaterOutputStream(bytes))) {
            out.writeInt(frames.size());
            for (JobFrame frame : frames) {
                write(out, frame);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
        return new Chunk(frames.size(), bytes.toByteArray());
    }

    /**
     * The frames of a chunk.
     *
     * @throws IllegalStateException where another version of the program wrote it, in a way that this one cannot read
     */
    static List<JobFrame> read(Chunk chunk) {
        byte[] bytes = chunk.bytes();
        if (bytes.length == 0 || bytes[0] != VERSION) {
            throw new IllegalStateException("a chunk that is not of version " + VERSION);
        }
        ByteArrayInputStream rest = new ByteArrayInputStream(bytes, 1, bytes.length - 1);
        try (DataInputStream in = new DataInputStream(new InflaterInputStream(rest))) {
            int count = in.readInt();
            List<JobFrame> frames = new ArrayList<>(count);
            for (int i = 0; i < count; i++) {
                frames.add(readFrame(in));
            }
            // the end is where the checksum is looked at
            if (in.read() >= 0) {
                throw new IOException("there is more than the frames");
            }
            return frames;
        } catch (IOException e) {
            throw new IllegalStateException("a chunk that is damaged", e);
        }
    }

    private static void write(DataOutputStream out, JobFrame frame) throws IOException {
        out.writeLong(frame.line());
        write(out, frame.request());
        writePlaces(out, frame.places());
        writeProblem(out, frame.problem());
    }

    private static JobFrame readFrame(DataInputStream in) throws IOException {
        return new JobFrame(in.readLong(), readBytes(in), readPlaces(in), readProblem(in));
    }

    private static void writePlaces(DataOutputStream out, JobFrame.Places places) throws IOException {
        out.writeBoolean(places != null);
        if (places == null) {
            return;
        }
        out.writeInt(places.lines().size());
        for (long line : places.lines()) {
            out.writeLong(line);
        }
        write(out, places.columns());
    }

    private static JobFrame.Places readPlaces(DataInputStream in) throws IOException {
        if (!in.readBoolean()) {
            return null;
        }
        int count = in.readInt();
        List<Long> lines = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            lines.add(in.readLong());
        }
        return new JobFrame.Places(lines, readTexts(in));
    }

    private static void writeProblem(DataOutputStream out, ProblemReport problem) throws IOException {
        out.writeBoolean(problem != null);
        if (problem == null) {
            return;
        }
        write(out, problem.type());
        write(out, problem.title());
        out.writeInt(problem.status());
        write(out, problem.detail());
        List<Violation> violations = problem.violations();
        out.writeInt(violations == null ? ABSENT : violations.size());
        if (violations == null) {
            return;
        }
        for (Violation violation : violations) {
            write(out, violation.path());
            write(out, violation.key());
            write(out, violation.message());
            write(out, violation.given());
            write(out, violation.taken());
        }
    }

    private static ProblemReport readProblem(DataInputStream in) throws IOException {
        if (!in.readBoolean()) {
            return null;
        }
        String type = readText(in);
        String title = readText(in);
        int status = in.readInt();
        String detail = readText(in);
        int count = in.readInt();
        List<Violation> violations = count == ABSENT ? null : new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            violations.add(new Violation(readText(in), readText(in), readText(in), readText(in), readTexts(in)));
        }
        return new ProblemReport(type, title, status, detail, violations);
    }

    private static void write(DataOutputStream out, List<String> texts) throws IOException {
        out.writeInt(texts == null ? ABSENT : texts.size());
        if (texts != null) {
            for (String text : texts) {
                write(out, text);
            }
        }
    }

    private static List<String> readTexts(DataInputStream in) throws IOException {
        int count = in.readInt();
        List<String> texts = count == ABSENT ? null : new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            texts.add(readText(in));
        }
        return texts;
    }

    private static void write(DataOutputStream out, String text) throws IOException {
        write(out, text == null ? null : text.getBytes(StandardCharsets.UTF_8));
    }

    private static String readText(DataInputStream in) throws IOException {
        byte[] bytes = readBytes(in);
        return bytes == null ? null : new String(bytes, StandardCharsets.UTF_8);
    }

    private static void write(DataOutputStream out, byte[] bytes) throws IOException {
        out.writeInt(bytes == null ? ABSENT : bytes.length);
        if (bytes != null) {
            out.write(bytes);
        }
    }

    private static byte[] readBytes(DataInputStream in) throws IOException {
        int length = in.readInt();
        if (length == ABSENT) {
            return null;
        }
        byte[] bytes = new byte[length];
        in.readFully(bytes);
        return bytes;
    }
}
