package org.seamtally.bench;

import java.util.concurrent.TimeUnit;
import java.util.function.DoubleSupplier;
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
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;
import org.seamtally.seam.SeamUnderTest;
import org.seamtally.seam.TubeToTube;

/**
 * How long one seam takes, from sizes to length, volume and throat. The three joints take the three ways through the
 * integral: two open stretches (tubes of one size), a closed one that settles at once, a closed one between tubes that
 * nearly touch.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
// the compiler settles after some 20 s
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class SeamBench {

    private static final double MAIN_DIAMETER = 38.1e-3;

    /** Branch over main diameter. */
    @Param({"1", "0.8", "0.999999"})
    public double ratio;

    private Joint joint;
    private DoubleSupplier general;

    /** The branch is what varies. */
    @Setup
    public void joint() {
        DepositSection fillet = DepositSection.ofLeg(3.175e-3, 0, new Face(Face.Form.CONVEX, 0.05));
        joint = new TubeToTube(ratio * MAIN_DIAMETER, 2.413e-3, MAIN_DIAMETER, 2.413e-3, Math.toRadians(45), 0, fillet);
        // of one size the integrand by the angle has a kink without a value: a hair under it stands for it
        general = SeamUnderTest.generally(
                Math.min(ratio, 1 - 1e-6) * MAIN_DIAMETER / 2, MAIN_DIAMETER / 2, Math.toRadians(45), fillet);
    }

    /** One seam. */
    @Benchmark
    public Seam seam() {
        return joint.seam();
    }

    /** The same length and deposit, good to 1e-10, by a library's Simpson's rule over the angle round the branch. */
    @Benchmark
    public double lengthAndDepositByGeneralIntegrator() {
        return general.getAsDouble();
    }

    /** Runs this benchmark alone. */
    public static void main(String[] args) throws RunnerException {
        new Runner(new OptionsBuilder().include(SeamBench.class.getName()).build()).run();
    }
}
