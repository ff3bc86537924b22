package org.seamtally.cli;

import static org.seamtally.cli.EstimateTable.WIDTH;
import static org.seamtally.wire.Figures.NONE;
import static org.seamtally.wire.Figures.four;
import static org.seamtally.wire.Figures.number;
import static org.seamtally.wire.Figures.percent;
import static org.seamtally.wire.Figures.withUnit;
import static org.seamtally.wire.Figures.wrapped;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.ComparisonAnswer;
import org.seamtally.wire.Figures;
import org.seamtally.wire.PerStartAnswer;
import org.seamtally.wire.SetUpAnswer;

/** Gas set-ups side by side. */
final class ComparisonTable {

    private static final double MILLIMETRES_AN_INCH = 25.4;

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
            out.println(wrapped("\"" + setUp.name() + "\" " + setUp.verdict().text() + ".", WIDTH, "  ", "    "));
        }
        out.println();
        printOrifices();
        out.println();
        out.println(
                answer.best() == null
                        ? "No setting stands."
                        : "Least gas with a setting that stands, whatever it costs to get: \"" + answer.best() + "\".");
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
            if (!setUp.steady().reachable()) {
                // gas that does not shield costs less, which is no saving
                table.row(setUp.name(), NONE, NONE, NONE, NONE, NONE, "not reached");
                continue;
            }
            table.row(
                    setUp.name(),
                    number(setUp.perYear().value(), 0),
                    number(setUp.surgePerYear().value(), 0),
                    setUp.savedPerYear() == null
                            ? NONE
                            : number(setUp.savedPerYear().value(), 0),
                    text(setUp.costPerYear()),
                    text(setUp.costSavedPerYear()),
                    setUp.paybackShifts() == null ? NONE : number(setUp.paybackShifts(), 1));
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
                    setUp.steady().reachable() ? percent(setUp.steady().drift()) : NONE,
                    !setUp.steady().reachable() ? "not reached" : setUp.steady().stands() ? "stands" : "drifts");
        }
        table.print(out);
    }

    /** The best orifice of each hose, once where several set-ups have the same one. */
    private void printOrifices() {
        Map<SetUpAnswer.OrificeAnswer, List<String>> names = new LinkedHashMap<>();
        for (SetUpAnswer setUp : answer.setUps()) {
            names.computeIfAbsent(setUp.bestOrifice(), best -> new ArrayList<>())
                    .add("\"" + setUp.name() + "\"");
        }
        names.forEach((best, setUps) -> out.println(wrapped(
                "Best orifice for the hose of " + String.join(", ", setUps) + ": " + orifice(best),
                WIDTH,
                "  ",
                "    ")));
    }

    private static String orifice(SetUpAnswer.OrificeAnswer best) {
        return switch (best.answer()) {
            case "found" ->
                withUnit(best.exact().diameter())
                        + ", where the drift is just what is allowed; next size up " + number(inches(best.inch()), 3)
                        + " in ("
                        + effect(best.inch()) + ") or " + number(millimetres(best.metric()), 2) + " mm ("
                        + effect(best.metric()) + ").";
            case "none-stands" -> "none, with any of them the setting does not stand.";
            default -> "none is needed, a start throws nothing away.";
        };
    }

    private static String effect(SetUpAnswer.OrificeAnswer.Size size) {
        return "peak " + withUnit(size.peakFlow()) + ", drift " + percent(size.drift());
    }

    /** Sizes in steps of 0.001 in are drilled and sold in inches, whatever units the table is in. */
    private static double inches(SetUpAnswer.OrificeAnswer.Size size) {
        return size.diameter().unit().equals("in")
                ? size.diameter().value()
                : size.diameter().value() / MILLIMETRES_AN_INCH;
    }

    private static double millimetres(SetUpAnswer.OrificeAnswer.Size size) {
        return size.diameter().unit().equals("mm")
                ? size.diameter().value()
                : size.diameter().value() * MILLIMETRES_AN_INCH;
    }

    private static String text(String money) {
        return money == null ? NONE : Figures.money(money);
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
