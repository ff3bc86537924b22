package org.seamtally.batch;

import java.time.Duration;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * How fast a batch goes, from what is kept of it. The first chunk only starts the clock, as how long it was waited for says
 * nothing of speed; where it is the only one, the end of the upload does.
 *
 * @param framesPerSecond absent before the first chunk is done, or where no time passed
 * @param secondsLeft at that pace; absent where it has ended, nobody works on it or there is no pace
 */
record BatchPace(OptionalDouble framesPerSecond, OptionalDouble secondsLeft) {

    static BatchPace of(KeptBatch batch) {
        OptionalDouble pace = pace(batch);
        long left = batch.sealed().frames() - batch.counts().read();
        boolean goesOn = BatchState.of(batch) == BatchState.RUNNING && pace.isPresent();
        return new BatchPace(pace, goesOn ? OptionalDouble.of(left / pace.getAsDouble()) : OptionalDouble.empty());
    }

    private static OptionalDouble pace(KeptBatch batch) {
        if (batch.chunksDone() == 0) {
            return OptionalDouble.empty();
        }
        double read = batch.counts().read();
        boolean onlyOne = batch.chunksDone() == 1;
        double timed = onlyOne ? read : read * (batch.chunksDone() - 1) / batch.chunksDone();
        Instant from = onlyOne ? batch.sealed().at() : batch.firstDone().orElseThrow();
        double seconds = Duration.between(from, batch.lastDone().orElseThrow()).toNanos() / 1e9;
        return seconds > 0 ? OptionalDouble.of(timed / seconds) : OptionalDouble.empty();
    }
}
