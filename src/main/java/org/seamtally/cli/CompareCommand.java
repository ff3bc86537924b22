package org.seamtally.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.ComparisonAnswer;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Outcome;
import picocli.CommandLine.Command;

/** Compares gas set-ups. */
@Command(
        name = "compare",
        description = "Compares hoses, pressures and orifices by the gas that starts and stops waste.",
        mixinStandardHelpOptions = true)
final class CompareCommand extends FileCommand<ComparisonAnswer> {

    @Override
    Outcome<ComparisonAnswer> answer(Engine engine, InputStream in, UnitSystem units) throws IOException {
        return engine.comparison(in, units);
    }

    @Override
    void printTable(ComparisonAnswer answer, PrintWriter out) {
        new ComparisonTable(answer, out).print();
    }

    @Override
    void printCsv(ComparisonAnswer answer, PrintWriter out) throws IOException {
        ComparisonTable.printCsv(answer, out);
    }
}
