package org.seamtally.wire;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.seamtally.batch.Form;
import org.seamtally.batch.JobFiles;
import org.seamtally.batch.JobFrames;
import org.seamtally.frame.EarlierWork;
import org.seamtally.frame.FrameEstimator;
import org.seamtally.frame.FrameJob;
import org.seamtally.quantity.UnitSystem;

/**
 * What a batch cannot do without, and nothing else: the engine over frames that are parsed already, and, where it is asked
 * for, the job file parsed and written again. Prints the nanoseconds of CPU time that go off the process's own: the parsing
 * that was done beforehand. Without a frame's fault, without results, without order to keep.
 *
 * <p>Run by {@code load-tests/batch-speed}. It stands in this package since a parsed request is nobody else's.
 */
public final class BareLoop {

    // frames that are parsed beforehand at a time: all at once would be a heap that no batch has
    private static final int BLOCK = 100;

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final FrameEstimator estimator = new FrameEstimator(new EarlierWork());
    private final EngineAnswer identity = new Engine(ProgramVersion.text()).identity();
    private final Shown shown = new Shown(UnitSystem.SI);
    private long beforehand;
    private long blackHole;

    private BareLoop() {}

    /** A frame that is parsed. */
    private record Parsed(FrameJob job, List<String> kinds) {}

    /** @param args the job file (NDJSON), and where it is written again */
    public static void main(String[] args) throws Exception {
        BareLoop loop = new BareLoop();
        loop.engine(Path.of(args[0]));
        loop.rewrite(Path.of(args[0]), Path.of(args[1]));
        System.out.println(loop.beforehand);
        // what is looked at was not computed for nothing
        if (loop.blackHole == 42) {
            System.err.println();
        }
    }

    private void engine(Path file) throws IOException, RefusedException {
        try (InputStream in = Files.newInputStream(file)) {
            JobFrames frames = JobFiles.open(in, Form.NDJSON, null);
            List<Parsed> block = new ArrayList<>();
            do {
                long start = THREADS.getCurrentThreadCpuTime();
                block.clear();
                for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
                    block.add(parsed(frame));
                    if (block.size() == BLOCK) {
                        break;
                    }
                }
                beforehand += THREADS.getCurrentThreadCpuTime() - start;
                for (Parsed frame : block) {
                    FrameEstimateAnswer answer = FrameEstimateAnswer.of(
                            estimator.estimate(frame.job(), () -> {}), frame.kinds(), shown, identity);
                    blackHole += answer.joints().size();
                }
            } while (block.size() == BLOCK);
        }
    }

    private static Parsed parsed(JobFrame frame) throws IOException, RefusedException {
        FrameEstimateRequest request =
                RequestReader.read(new ByteArrayInputStream(frame.request()), FrameEstimateRequest.class);
        return new Parsed(
                request.job(),
                request.frame().joints().stream()
                        .map(joint -> JointKinds.nameOf(joint.getClass()))
                        .toList());
    }

    private void rewrite(Path file, Path again) throws IOException, RefusedException {
        try (InputStream in = Files.newInputStream(file);
                OutputStream out = new BufferedOutputStream(Files.newOutputStream(again))) {
            JobFrames frames = JobFiles.open(in, Form.NDJSON, null);
            for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
                blackHole += parsed(frame).kinds().size();
                // as it was sent: to make the text anew would take longer, and be to our favour
                out.write(frame.request());
                out.write('\n');
            }
        }
    }
}
