package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.Outcome;
import picocli.CommandLine.Command;

/** Estimates a frame. */
@Command(
        name = "estimate",
        description = "Estimates a frame: joints, time, filler, gas and, where prices are given, money.",
        mixinStandardHelpOptions = true)
final class EstimateCommand extends FileCommand<FrameEstimateAnswer> {

    @Override
    Outcome<FrameEstimateAnswer> answer(Engine engine, InputStream in, UnitSystem units) throws IOException {
        return engine.frameEstimate(in, units);
    }

    @Override
    void printTable(FrameEstimateAnswer answer, PrintWriter out) {
        new EstimateTable(answer, out).print();
    }

    @Override
    void printCsv(FrameEstimateAnswer answer, PrintWriter out) throws IOException {
        EstimateCsv.print(answer, out);
    }
}
