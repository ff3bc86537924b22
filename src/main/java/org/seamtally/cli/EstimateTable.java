package org.seamtally.cli;

import static org.seamtally.cli.Figures.four;
import static org.seamtally.cli.Figures.minutes;
import static org.seamtally.cli.Figures.number;
import static org.seamtally.cli.Figures.percent;
import static org.seamtally.cli.Figures.time;
import static org.seamtally.cli.Figures.withUnit;
import static org.seamtally.cli.Figures.wrapped;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.seamtally.wire.AssumptionAnswer;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.CostAnswer;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.GasAnswer;
import org.seamtally.wire.JointAnswer;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.TotalsAnswer;

/** A quote on a terminal or a sheet of paper, 100 columns wide. */
final class EstimateTable {

    static final int WIDTH = 100;

    // more marks than this in one sentence and nobody reads the sentence
    private static final int MOST_MARKS = 8;

    private final FrameEstimateAnswer answer;
    private final PrintWriter out;

    EstimateTable(FrameEstimateAnswer answer, PrintWriter out) {
        this.answer = answer;
        this.out = out;
    }

    void print() {
        String name = answer.name() == null ? "Frame" : answer.name();
        out.println(name + ", " + (answer.quantity() == 1 ? "1 frame" : answer.quantity() + " frames"));
        out.println();
        printJoints();
        out.println();
        printWork();
        out.println();
        printGas();
        if (answer.cost() != null) {
            out.println();
            printCost(answer.cost());
        }
        printAssumptions();
        printCautions();
        out.println();
        out.println("seamtally " + answer.engine().version() + ", catalogue "
                + answer.engine().catalogue());
    }

    private void printJoints() {
        JointAnswer any = answer.joints().get(0);
        Columns table = new Columns("lrlrrrrrrr");
        table.row("Joint", "no.", "kind", "seam", "angle", "deposit", "filler", "arc", "heat input", "gas");
        table.row(
                "",
                "",
                "",
                any.seam().length().unit(),
                "deg",
                any.seam().depositVolume().unit(),
                any.filler().consumed().unit(),
                "min:s",
                heatUnit(),
                any.gas().total().unit());
        table.rule();
        for (JointAnswer joint : answer.joints()) {
            table.row(
                    joint.mark(),
                    Integer.toString(joint.count()),
                    joint.kind(),
                    joint.seam().dihedralAngle() == null
                            ? Figures.NONE
                            : four(joint.seam().length()),
                    angles(joint.seam().dihedralAngle()),
                    four(joint.seam().depositVolume()),
                    four(joint.filler().consumed()),
                    minutes(joint.arc().time()),
                    four(joint.arc().heatInput()),
                    four(joint.gas().total()));
        }
        table.rule();
        TotalsAnswer frame = answer.perFrame();
        table.row(
                "A frame",
                Integer.toString(
                        answer.joints().stream().mapToInt(JointAnswer::count).sum()),
                frame.plugs() == 0 ? "" : "plugs: " + frame.plugs(),
                four(frame.seam().length()),
                "",
                four(frame.seam().depositVolume()),
                four(frame.filler().consumed()),
                minutes(frame.arc().time()),
                "",
                four(frame.gas().total()));
        table.print(out);
    }

    private String heatUnit() {
        return answer.joints().stream()
                .map(joint -> joint.arc().heatInput())
                .filter(Objects::nonNull)
                .map(Quantity::unit)
                .findFirst()
                .orElse("");
    }

    private static String angles(org.seamtally.wire.SeamAnswer.Angles range) {
        if (range == null) {
            return Figures.NONE;
        }
        String least = number(range.least().value(), 0);
        String greatest = number(range.greatest().value(), 0);
        return least.equals(greatest) ? least : least + "-" + greatest;
    }

    private void printWork() {
        TotalsAnswer one = answer.perFrame();
        TotalsAnswer all = answer.forQuantity();
        Columns table = new Columns("lrr");
        table.row("Work and material", "a frame", "the order");
        table.rule();
        table.row(
                "arc, tacks included",
                time(one.labour().arc()),
                time(all.labour().arc()));
        table.row(
                "handling at the joint",
                time(one.labour().handling()),
                time(all.labour().handling()));
        table.row("fit-up", time(one.labour().fitUp()), time(all.labour().fitUp()));
        table.row("set-up", time(one.labour().setUp()), time(all.labour().setUp()));
        if (one.preheat() != null) {
            table.row("preheat", time(one.labour().preheat()), time(all.labour().preheat()));
        }
        table.rule();
        table.row("labour", time(one.labour().total()), time(all.labour().total()));
        table.row(
                "filler consumed",
                withUnit(one.filler().consumed()),
                withUnit(all.filler().consumed()));
        table.row("rods", number(one.filler().rods(), 1), number(all.filler().rods(), 0));
        table.row(
                "electricity", withUnit(one.arc().energy()), withUnit(all.arc().energy()));
        if (one.preheat() != null) {
            table.row(
                    "preheat supplied",
                    withUnit(one.preheat().energy()),
                    withUnit(all.preheat().energy()));
        }
        table.print(out);
    }

    private void printGas() {
        GasAnswer one = answer.perFrame().gas();
        GasAnswer all = answer.forQuantity().gas();
        Columns table = new Columns("lrrr");
        table.row("Shielding gas, " + one.starts() + " starts a frame", "a frame", "the order", "share");
        table.rule();
        double total = one.total().value();
        gas(table, "while the arc burns", one.arc(), all.arc(), total);
        gas(table, "pre-flow", one.preFlow(), all.preFlow(), total);
        gas(table, "post-flow", one.postFlow(), all.postFlow(), total);
        gas(
                table,
                "start surge (stored: " + withUnit(one.storedGas()) + ")",
                one.startSurge(),
                all.startSurge(),
                total);
        if (one.backPurge().value() > 0) {
            gas(table, "back purge", one.backPurge(), all.backPurge(), total);
        }
        if (one.leak().value() > 0) {
            gas(table, "leaks", one.leak(), all.leak(), total);
        }
        table.rule();
        gas(table, "gas", one.total(), all.total(), total);
        table.print(out);
    }

    private static void gas(Columns table, String what, Quantity one, Quantity all, double total) {
        table.row(what, withUnit(one), withUnit(all), percent(total == 0 ? 0 : one.value() / total));
    }

    private void printCost(CostAnswer cost) {
        Columns table = new Columns("lrrr");
        table.row("Price of the order, " + cost.heading(), "quantity", "rate", cost.currency());
        table.rule();
        for (CostAnswer.Line line : cost.lines()) {
            table.row(
                    line.item(),
                    line.quantity() == null ? "" : withUnit(line.quantity()),
                    line.rate() == null ? "" : line.rate(),
                    line.amount());
        }
        table.rule();
        table.row("total", "", "", cost.total());
        table.row("for one frame", "", "", cost.perFrame());
        table.print(out);
    }

    private void printAssumptions() {
        if (answer.assumptions().isEmpty()) {
            return;
        }
        out.println();
        out.println("Assumed, since it was left out:");
        for (AssumptionAnswer assumption : answer.assumptions()) {
            out.println(wrapped(
                    assumption.path() + " = " + assumption.value() + " (" + assumption.because() + ")"
                            + marks(assumption),
                    WIDTH,
                    "  ",
                    "    "));
        }
    }

    private String marks(AssumptionAnswer assumption) {
        int used = assumption.joints().size();
        if (used == 0 || used == answer.joints().size()) {
            return "";
        }
        return ": " + (used <= MOST_MARKS ? String.join(", ", assumption.joints()) : used + " of the joints");
    }

    /** One line a text: the joints it stands on, or the frame's own. */
    private void printCautions() {
        Map<String, List<String>> joints = new LinkedHashMap<>();
        for (JointAnswer joint : answer.joints()) {
            for (CautionAnswer caution : joint.cautions()) {
                joints.computeIfAbsent(caution.text(), text -> new ArrayList<>())
                        .add(joint.mark());
            }
        }
        out.println();
        out.println("Cautions:");
        joints.forEach((text, marks) -> {
            String which = marks.size() <= MOST_MARKS
                    ? String.join(", ", marks)
                    : marks.get(0) + " and " + (marks.size() - 1) + " more";
            out.println(wrapped(which + ": " + text, WIDTH, "  ", "    "));
        });
        for (CautionAnswer caution : answer.cautions()) {
            out.println(wrapped(caution.text(), WIDTH, "  ", "    "));
        }
    }
}
