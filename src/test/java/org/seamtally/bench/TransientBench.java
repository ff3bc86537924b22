package org.seamtally.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.seamtally.gas.StartTransient;
import org.seamtally.gas.TransientUnderTest;

/** What the start transient of a new set-up costs; beside it, for information, general solvers on the same hose. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 5, time = 2)
public class TransientBench {

    private double longer;

    /** Another hose each time, so that nothing is known already. */
    @Benchmark
    public double newSetUp() {
        longer += 1e-6;
        return StartTransient.of(TransientUnderTest.longerBy(longer)).netSurge();
    }

    /** A stiff solver on ten cells. */
    @Benchmark
    @Warmup(iterations = 1, time = 2)
    @Measurement(iterations = 2, time = 2)
    public double stiffSolverOnTenCells() {
        return TransientUnderTest.stiffly(10);
    }

    /** An explicit adaptive solver on ten cells, for the first tenth of a second of the six that it takes. */
    @Benchmark
    @Warmup(iterations = 1, time = 2)
    @Measurement(iterations = 2, time = 2)
    public double explicitSolverOnTenCellsForATenthOfASecond() {
        return TransientUnderTest.explicitly(10, 0.1)[0];
    }
}
