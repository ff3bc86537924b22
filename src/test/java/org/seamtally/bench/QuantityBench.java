package org.seamtally.bench;

import java.util.concurrent.TimeUnit;
import javax.measure.Quantity;
import javax.measure.format.QuantityFormat;
import javax.measure.quantity.Length;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.seamtally.quantity.Dimension;
import tech.units.indriya.format.SimpleQuantityFormat;
import tech.units.indriya.unit.Units;

/** What reading one length takes; beside it a general units library on the same texts, to the same unit. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 5, time = 2)
public class QuantityBench {

    private static final int TEXTS = 4;

    // what the library reads too
    private final String[] metric = {"38.1 mm", "2.413 mm", "7.62 m", "3.175 cm"};
    private final String[] trade = {"1.5 in", "1-1/2 in", "0.095\"", "25 ft"};
    private final QuantityFormat library = SimpleQuantityFormat.getInstance();

    /** Metric lengths. */
    @Benchmark
    @OperationsPerInvocation(TEXTS)
    public double metric() {
        return read(metric);
    }

    /** The trade's lengths, a fraction among them. */
    @Benchmark
    @OperationsPerInvocation(TEXTS)
    public double trade() {
        return read(trade);
    }

    private static double read(String[] texts) {
        double sum = 0;
        for (String text : texts) {
            sum += Dimension.LENGTH.read(text);
        }
        return sum;
    }

    /** Metric lengths by the library. */
    @Benchmark
    @OperationsPerInvocation(TEXTS)
    public double metricByTheLibrary() {
        double sum = 0;
        for (String text : metric) {
            Quantity<Length> length = library.parse(text).asType(Length.class);
            sum += length.to(Units.METRE).getValue().doubleValue();
        }
        return sum;
    }
}
