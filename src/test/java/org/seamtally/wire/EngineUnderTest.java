package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import org.seamtally.frame.FrameEstimate;
import org.seamtally.quantity.UnitSystem;

/** What the benchmarks reach of this room's insides: the steps from a text to a text, each by itself. */
public final class EngineUnderTest {

    private static final Shown SHOWN = new Shown(UnitSystem.SI);

    private final Engine engine = new Engine("1");

    /** A request that is read and fits. */
    public record Bound(Object request) {}

    /** From text to text, as the service does it. */
    public byte[] estimate(byte[] request) throws IOException {
        return write(answer(request));
    }

    /** From a text to the answer that is to be written. */
    public Object answer(byte[] request) throws IOException {
        return ((Outcome.Answered<FrameEstimateAnswer>)
                        engine.frameEstimate(new ByteArrayInputStream(request), UnitSystem.SI))
                .answer();
    }

    /** Reads and checks a request. */
    public static Bound bind(byte[] request) throws IOException, RefusedException {
        return new Bound(RequestReader.read(new ByteArrayInputStream(request), FrameEstimateRequest.class));
    }

    /** Computes what was read. */
    public Object compute(Bound bound) throws RefusedException {
        return engine.estimate((FrameEstimateRequest) bound.request());
    }

    /** Turns what was computed into an answer. */
    public Object shown(Bound bound, Object estimate) {
        return engine.shown((FrameEstimateRequest) bound.request(), (FrameEstimate) estimate, SHOWN.units());
    }

    /** Writes an answer. */
    public static byte[] write(Object answer) {
        return Json.bytes(answer);
    }
}
