package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.seamtally.frame.FrameEstimate;

/** A frame of a job file on its way to its line, step by step; a step that refuses it leaves nothing to the later ones. */
final class JobInHand {

    private final JobFrame frame;
    private FrameEstimateRequest request;
    private FrameEstimate estimate;
    private FrameEstimateAnswer answer;
    private ProblemReport problem;

    JobInHand(JobFrame frame) {
        this.frame = frame;
        this.problem = frame.problem();
    }

    /** What a step does with what the one before it made. */
    interface Step<F, T> {
        T on(F from) throws RefusedException;
    }

    void read() {
        request = step(frame.request(), JobInHand::request);
    }

    void estimate(Step<FrameEstimateRequest, FrameEstimate> work) {
        estimate = step(request, work);
    }

    void answer(Step<JobInHand, FrameEstimateAnswer> work) {
        answer = step(this, work);
        estimate = null;
    }

    FrameEstimateRequest request() {
        return request;
    }

    FrameEstimate estimate() {
        return estimate;
    }

    /** What came of it. */
    JobLine line() {
        return problem == null ? JobAnswer.done(frame.line(), answer) : JobAnswer.refused(frame.line(), problem);
    }

    private <F, T> T step(F from, Step<F, T> work) {
        if (problem != null) {
            return null;
        }
        try {
            return work.on(from);
        } catch (RefusedException e) {
            problem = JobColumns.placed(e.problem(), frame.places());
        } catch (FrameDeadline.PassedException e) {
            problem = FrameDeadline.PROBLEM;
        }
        return null;
    }

    private static FrameEstimateRequest request(byte[] json) throws RefusedException {
        try {
            return RequestReader.read(new ByteArrayInputStream(json), FrameEstimateRequest.class);
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be fetched", e);
        }
    }
}
