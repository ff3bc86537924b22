package org.seamtally.bench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.seamtally.wire.EngineUnderTest;
import org.seamtally.wire.RefusedException;

/**
 * A frame estimate from text to text and its steps, of joints that are all different; beside it what a server cannot do
 * without (the same request bound and checked, a stored answer of the same shape written), and general-purpose JSON: the
 * request read to a tree and the answer written from one.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 5, time = 2)
public class FrameBench {

    // more than the engine knows seams of, so that each joint is new to it; and at least so many frames, which is more
    // than a
    // processor's caches guess ahead, and little beside the heap
    private static final int JOINTS = 6000;
    private static final int LEAST_FRAMES = 64;

    /** Joints a frame. */
    @Param({"1", "20", "150"})
    public int joints;

    private final ObjectMapper general = new ObjectMapper();
    private final EngineUnderTest engine = new EngineUnderTest();
    private byte[][] requests;
    private NewFrames frames;
    private Object stored;
    private JsonNode storedTree;
    private int next;

    /** Makes requests. */
    @Setup
    public void requests() throws IOException {
        frames = new NewFrames(1);
        requests = new byte[Math.max(LEAST_FRAMES, JOINTS / joints)][];
        for (int i = 0; i < requests.length; i++) {
            requests[i] = frames.next(joints, false);
        }
        stored = engine.answer(requests[0]);
        storedTree = general.readTree(EngineUnderTest.write(stored));
    }

    private byte[] request() {
        next = (next + 1) % requests.length;
        return requests[next];
    }

    /** All of it, set-ups drawn from twelve. */
    @Benchmark
    public byte[] estimate() throws IOException {
        return engine.estimate(request());
    }

    /** All of it, the making of a request with twelve set-ups that were never seen before included. */
    @Benchmark
    public byte[] estimateOfNewSetUps() throws IOException {
        return engine.estimate(frames.next(joints, true));
    }

    /** What remains where nothing is computed. */
    @Benchmark
    public byte[] echo() throws IOException, RefusedException {
        EngineUnderTest.bind(request());
        return EngineUnderTest.write(stored);
    }

    /** JSON in: read strictly and checked. */
    @Benchmark
    public Object read() throws IOException, RefusedException {
        return EngineUnderTest.bind(request());
    }

    /** JSON in, to a tree that knows nothing of what it holds. */
    @Benchmark
    public JsonNode readToTree() throws IOException {
        return general.readTree(request());
    }

    /** JSON out. */
    @Benchmark
    public byte[] write() {
        return EngineUnderTest.write(stored);
    }

    /** JSON out, from a tree. */
    @Benchmark
    public byte[] writeFromTree() throws JsonProcessingException {
        return general.writeValueAsBytes(storedTree);
    }
}
