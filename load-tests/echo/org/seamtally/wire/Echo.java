package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.seamtally.quantity.UnitSystem;

/**
 * Reads and checks a request as the engine does, and answers with an answer worked out once for the first request of as many
 * joints or set-ups: all that a server does but the computing. Of load tests alone, in no shipped jar.
 */
public final class Echo {

    private final Engine engine;
    private final Map<Integer, FrameEstimateAnswer> estimates = new ConcurrentHashMap<>();
    private final Map<Integer, ComparisonAnswer> comparisons = new ConcurrentHashMap<>();

    /** @param engine works out the stored answers */
    public Echo(Engine engine) {
        this.engine = engine;
    }

    /** A stored estimate of as many joints, in SI units. */
    public Outcome<FrameEstimateAnswer> frameEstimate(InputStream in, UnitSystem units) throws IOException {
        try {
            return new Outcome.Answered<>(stored(RequestReader.read(in, FrameEstimateRequest.class)));
        } catch (RefusedException e) {
            return new Outcome.Refused<>(e.problem());
        }
    }

    /** The same as a line of results. */
    public JobLine jobLine(JobFrame frame) {
        try {
            return JobAnswer.done(
                    frame.line(),
                    stored(RequestReader.read(new ByteArrayInputStream(frame.request()), FrameEstimateRequest.class)));
        } catch (RefusedException e) {
            return JobAnswer.refused(frame.line(), e.problem());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A stored comparison of as many set-ups, in SI units. */
    public Outcome<ComparisonAnswer> comparison(InputStream in, UnitSystem units) throws IOException {
        byte[] body = in.readAllBytes();
        try {
            ComparisonRequest request = RequestReader.read(new ByteArrayInputStream(body), ComparisonRequest.class);
            int setUps = request.setUps().size();
            ComparisonAnswer answer = comparisons.get(setUps);
            if (answer == null) {
                Outcome<ComparisonAnswer> first = engine.comparison(new ByteArrayInputStream(body), units);
                if (first instanceof Outcome.Refused) {
                    return first;
                }
                answer = ((Outcome.Answered<ComparisonAnswer>) first).answer();
                comparisons.put(setUps, answer);
            }
            return new Outcome.Answered<>(answer);
        } catch (RefusedException e) {
            return new Outcome.Refused<>(e.problem());
        }
    }

    private FrameEstimateAnswer stored(FrameEstimateRequest request) throws RefusedException {
        int joints = request.frame().joints().size();
        FrameEstimateAnswer answer = estimates.get(joints);
        if (answer == null) {
            answer = engine.shown(request, engine.estimate(request), UnitSystem.SI);
            estimates.put(joints, answer);
        }
        return answer;
    }
}
