package org.seamtally.cli;

import static org.seamtally.cli.EstimateTable.WIDTH;
import static org.seamtally.cli.Figures.four;
import static org.seamtally.cli.Figures.number;
import static org.seamtally.cli.Figures.percent;
import static org.seamtally.cli.Figures.withUnit;
import static org.seamtally.cli.Figures.wrapped;

import java.io.IOException;
import java.io.PrintWriter;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.ComparisonAnswer;
import org.seamtally.wire.PerStartAnswer;
import org.seamtally.wire.SetUpAnswer;

/** Gas set-ups side by side. */
final class ComparisonTable {

    private final ComparisonAnswer answer;
    private final PrintWriter out;

    ComparisonTable(ComparisonAnswer answer, PrintWriter out) {
        this.answer = answer;
        this.out = out;
    }

    void print() {
        printStarts();
        out.println();
        printYears();
        out.println();
        printFlows();
        out.println();
        for (SetUpAnswer setUp : answer.setUps()) {
            out.println(wrapped(setUp.name() + ": " + setUp.verdict().text() + ".", WIDTH, "  ", "    "));
            out.println(wrapped(orifice(setUp.bestOrifice()), WIDTH, "    ", "    "));
        }
        out.println();
        out.println(
                answer.best() == null
                        ? "No setting stands."
                        : "Least gas with a setting that stands: " + answer.best() + ".");
        out.println();
        out.println("Cautions:");
        for (CautionAnswer caution : answer.cautions()) {
            out.println(wrapped(caution.text(), WIDTH, "  ", "    "));
        }
    }

    private void printStarts() {
        Columns table = new Columns("lrrrrrr");
        String unit = answer.setUps().get(0).perStart().total().unit();
        table.row("Gas of one start, " + unit, "arc", "pre-flow", "surge", "post-flow", "total", "stored");
        table.rule();
        for (SetUpAnswer setUp : answer.setUps()) {
            PerStartAnswer start = setUp.perStart();
            table.row(
                    setUp.name(),
                    four(start.arc()),
                    four(start.preFlow()),
                    four(start.startSurge()),
                    four(start.postFlow()),
                    four(start.total()),
                    four(setUp.steady().storedGas()));
        }
        table.print(out);
    }

    private void printYears() {
        Columns table = new Columns("lrrrrrr");
        String unit = answer.setUps().get(0).perYear().unit();
        String money = answer.currency() == null ? "money" : answer.currency();
        table.row("A year", "gas", "surge", "saved", "gas", "saved", "paid back");
        table.row("", unit, unit, unit, money, money, "shifts");
        table.rule();
        for (SetUpAnswer setUp : answer.setUps()) {
            table.row(
                    setUp.name(),
                    number(setUp.perYear().value(), 0),
                    number(setUp.surgePerYear().value(), 0),
                    setUp.savedPerYear() == null
                            ? Figures.NONE
                            : number(setUp.savedPerYear().value(), 0),
                    text(setUp.costPerYear()),
                    text(setUp.costSavedPerYear()),
                    setUp.paybackShifts() == null ? Figures.NONE : number(setUp.paybackShifts(), 1));
        }
        table.print(out);
    }

    private void printFlows() {
        Columns table = new Columns("lrrrrrrr");
        SetUpAnswer any = answer.setUps().get(0);
        table.row("Flow", "peak", "peak Re", "Re > 2300", "within 5 %", "inlet", "drift", "setting");
        table.row(
                "",
                any.start().peakFlow().unit(),
                "",
                "for",
                "after",
                any.steady().inletGaugePressure().unit(),
                "",
                "");
        table.rule();
        for (SetUpAnswer setUp : answer.setUps()) {
            table.row(
                    setUp.name(),
                    four(setUp.start().peakFlow()),
                    number(setUp.start().peakNozzleReynolds(), 0),
                    withUnit(setUp.start().turbulentTime()),
                    withUnit(setUp.start().timeWithin5Percent()),
                    four(setUp.steady().inletGaugePressure()),
                    percent(setUp.steady().drift()),
                    !setUp.steady().reachable() ? "not reached" : setUp.steady().stands() ? "stands" : "drifts");
        }
        table.print(out);
    }

    private static String orifice(SetUpAnswer.OrificeAnswer best) {
        return switch (best.answer()) {
            case "found" ->
                "Best orifice for this hose: " + withUnit(best.exact().diameter()) + "; next size up "
                        + size(best.inch()) + " in steps of 0.001 in, " + size(best.metric()) + " in steps of 0.05 mm.";
            case "none-stands" -> "Best orifice for this hose: none, with any of them the setting does not stand.";
            default -> "Best orifice for this hose: none is needed, a start throws nothing away.";
        };
    }

    private static String size(SetUpAnswer.OrificeAnswer.Size size) {
        return withUnit(size.diameter()) + " (peak " + withUnit(size.peakFlow()) + ")";
    }

    private static String text(String money) {
        return money == null ? Figures.NONE : money;
    }

    static void printCsv(ComparisonAnswer answer, PrintWriter out) throws IOException {
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        SetUpAnswer any = answer.setUps().get(0);
        String gas = " [" + any.perStart().total().unit() + "]";
        printer.printRecord(
                "set-up",
                "arc a start" + gas,
                "pre-flow a start" + gas,
                "surge a start" + gas,
                "post-flow a start" + gas,
                "gas a year" + gas,
                "surge a year" + gas,
                "money a year",
                "saved a year",
                "peak flow [" + any.start().peakFlow().unit() + "]",
                "peak Re",
                "drift",
                "stands",
                "payback shifts");
        for (SetUpAnswer setUp : answer.setUps()) {
            printer.printRecord(
                    setUp.name(),
                    setUp.perStart().arc().value(),
                    setUp.perStart().preFlow().value(),
                    setUp.perStart().startSurge().value(),
                    setUp.perStart().postFlow().value(),
                    setUp.perYear().value(),
                    setUp.surgePerYear().value(),
                    setUp.costPerYear(),
                    setUp.costSavedPerYear(),
                    setUp.start().peakFlow().value(),
                    setUp.start().peakNozzleReynolds(),
                    setUp.steady().drift(),
                    setUp.steady().stands(),
                    setUp.paybackShifts());
        }
        printer.flush();
    }
}
