package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.SteelReviewAnswer;
import picocli.CommandLine.Command;

/** Reviews a steel with its fillers. */
@Command(
        name = "review",
        description = "Reviews a base steel with its fillers: which to take and why, hardness, preheat.",
        mixinStandardHelpOptions = true)
final class ReviewCommand extends FileCommand<SteelReviewAnswer> {

    @Override
    Outcome<SteelReviewAnswer> answer(Engine engine, InputStream in, UnitSystem units) throws IOException {
        return engine.steelReview(in, units);
    }

    @Override
    void printTable(SteelReviewAnswer answer, PrintWriter out) {
        new ReviewTable(answer, out).print();
    }

    @Override
    void printCsv(SteelReviewAnswer answer, PrintWriter out) throws IOException {
        ReviewCsv.print(answer, out);
    }
}
