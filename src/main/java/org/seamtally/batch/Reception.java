package org.seamtally.batch;

import java.io.IOException;
import java.io.InputStream;
import java.time.InstantSource;
import java.util.Optional;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.kept.IdempotencyKeys.Claim;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;
import org.seamtally.wire.RefusedException;

/** Takes an upload in: all of it is kept, or nothing. */
final class Reception {

    private final KeptBatches kept;
    private final InstantSource clock;
    private final ChunkSize size;

    Reception(KeptBatches kept, InstantSource clock, ChunkSize size) {
        this.kept = kept;
        this.clock = clock;
        this.size = size;
    }

    /** An upload without a key. */
    Received plain(BatchPlan plan, byte[] settings, InputStream body) throws IOException, RefusedException {
        return keep(plan, settings, new UploadedBody(body, plan, settings), null);
    }

    /** An upload that counts once. */
    Received keyed(BatchPlan plan, byte[] settings, InputStream body, ClaimedKey key)
            throws IOException, RefusedException {
        UploadedBody uploaded = new UploadedBody(body, plan, settings);
        Claim claim = key.claim();
        if (claim instanceof Claim.Settled settled) {
            return again(settled.use(), uploaded.digest());
        }
        if (claim instanceof Claim.InFlight) {
            return new Received.InFlight();
        }
        uploaded.whileRead(key.pulse());
        boolean accepted = false;
        try {
            Received received = keep(plan, settings, uploaded, key);
            accepted = received instanceof Received.Accepted;
            return received;
        } finally {
            if (!accepted) {
                quietly(key::release);
            }
        }
    }

    private static Received again(SettledKey use, String digest) {
        return use.digest().equals(digest) ? new Received.Replayed(use.answer()) : new Received.OtherBody();
    }

    private Received keep(BatchPlan plan, byte[] settings, UploadedBody body, ClaimedKey key)
            throws IOException, RefusedException {
        JobFrames frames = JobFiles.open(body, plan.form(), settings);
        boolean sealed = false;
        kept.begin(plan);
        body.whileRead(new Pulse(clock, KeptBatches.TOUCHED_EVERY, now -> kept.touch(plan.shop(), plan.id())));
        try {
            Upload upload = new Upload(kept, plan, size);
            upload.keep(frames);
            Sealed end = new Sealed(upload.chunks(), upload.frames(), body.digest(), clock.instant());
            byte[] answer = BatchAnswers.json(new KeptBatch(
                    plan, true, end, Optional.empty(), 0, Counts.NONE, Optional.empty(), Optional.empty()));
            try {
                kept.seal(plan.shop(), plan.id(), end, key == null ? null : key.settled(end.digest(), answer));
            } catch (KeyTakenException e) {
                return taken(key, end.digest());
            }
            sealed = true;
            return new Received.Accepted(answer, plan.id());
        } finally {
            if (!sealed) {
                quietly(() -> kept.discard(plan.shop(), plan.id()));
            }
        }
    }

    /** The claim had run out, and another request with the key was quicker: its answer counts. */
    private static Received taken(ClaimedKey key, String digest) {
        return key.claim() instanceof Claim.Settled settled ? again(settled.use(), digest) : new Received.InFlight();
    }

    /** Clears up after a fault that is on its way to the client: where that cannot be done now, sweeps do it later. */
    private static void quietly(Runnable clearing) {
        try {
            clearing.run();
        } catch (UnavailableException e) {
            // an upload that is not sealed is swept, and a claim runs out
            return;
        }
    }
}
