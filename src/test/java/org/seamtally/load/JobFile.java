package org.seamtally.load;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import org.seamtally.batch.Form;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Writes a made job file of any length to standard output: {@code load-tests/job-file}. */
@Command(
        name = "job-file",
        description = "Writes a job file of made frames to standard output; the same seed makes the same file.",
        mixinStandardHelpOptions = true)
public final class JobFile implements Runnable {

    private static final int BUFFER = 1 << 16;

    @Option(names = "--frames", required = true, paramLabel = "N", description = "How many frames.")
    private long frames;

    @Option(names = "--seed", required = true, paramLabel = "S", description = "What makes this file and no other.")
    private long seed;

    @Option(names = "--form", defaultValue = "ndjson", paramLabel = "ndjson|csv", description = "Form of the file.")
    private Form form;

    @Option(
            names = "--joints",
            defaultValue = "" + FrameMaker.USUAL_JOINTS,
            paramLabel = "J",
            description = "Joints a frame on average; ${DEFAULT-VALUE} unless said.")
    private int joints;

    @Option(
            names = "--refused",
            defaultValue = "0",
            paramLabel = "SHARE",
            description = "Share of frames that are wrong, 0 to 1; none unless said.")
    private double refused;

    /** @param args the options */
    public static void main(String[] args) {
        System.exit(new CommandLine(new JobFile())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .execute(args));
    }

    @Override
    public void run() {
        try (OutputStream out = new BufferedOutputStream(new FileOutputStream(FileDescriptor.out), BUFFER)) {
            write(out, form, frames, new FrameMaker(seed, joints, refused));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A file of made frames, as bytes. */
    public static byte[] bytes(Form form, long frames, long seed, int joints, double refused) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        write(out, form, frames, new FrameMaker(seed, joints, refused));
        return out.toByteArray();
    }

    /** Writes so many frames. */
    static void write(OutputStream out, Form form, long frames, FrameMaker maker) throws IOException {
        JobFileWriter writer = form == Form.CSV ? new JobFileWriter.Csv(out) : new JobFileWriter.Ndjson(out);
        for (long i = 0; i < frames; i++) {
            writer.write(maker.next());
        }
        writer.end();
    }
}
