package org.seamtally.cli;

import static org.seamtally.wire.Figures.four;
import static org.seamtally.wire.Figures.minutes;
import static org.seamtally.wire.Figures.money;
import static org.seamtally.wire.Figures.number;
import static org.seamtally.wire.Figures.percent;
import static org.seamtally.wire.Figures.time;
import static org.seamtally.wire.Figures.withUnit;
import static org.seamtally.wire.Figures.wrapped;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.CostAnswer;
import org.seamtally.wire.Figures;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.GasAnswer;
import org.seamtally.wire.GatheredAssumption;
import org.seamtally.wire.GatheredCaution;
import org.seamtally.wire.JointAnswer;
import org.seamtally.wire.LabourAnswer;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.SeamAnswer;
import org.seamtally.wire.TotalsAnswer;

/** A quote on a terminal or a sheet of paper, 100 columns wide. */
final class EstimateTable {

    static final int WIDTH = 100;

    /** Lines of a quote whose rate is a share, and of what. */
    private static final Map<String, String> SHARES =
            Map.of("rework", "of cost", "overhead", "of cost", "margin", "of price", "markup", "on cost");

    /** Lines whose quantity was worked out here; those of the shop's own are printed as they were given. */
    private static final Set<String> WORKED_OUT = Set.of("labour", "filler", "gas", "electricity", "fuel");

    /** The caution after which those of the shop follow. */
    private static final String LAST_OF_QUOTE = "no-procedure";

    private final FrameEstimateAnswer answer;
    private final PrintWriter out;

    EstimateTable(FrameEstimateAnswer answer, PrintWriter out) {
        this.answer = answer;
        this.out = out;
    }

    void print() {
        String name = answer.name() == null ? "" : answer.name() + ", ";
        out.println(name + (answer.quantity() == 1 ? "1 frame" : answer.quantity() + " frames"));
        out.println();
        printJoints();
        printProcedures();
        out.println();
        printWork();
        out.println();
        printGas();
        out.println();
        if (answer.cost() == null) {
            out.println("No prices were given, so there is no price.");
        } else {
            printCost(answer.cost());
        }
        printAssumptions();
        printBasis();
        printCautions();
        out.println();
        out.println("seamtally " + answer.engine().version() + ", catalogue "
                + answer.engine().catalogue());
    }

    private void printJoints() {
        JointAnswer any = answer.joints().get(0);
        Columns table = new Columns("lrlrrrrrrrr");
        table.row(
                "Joint", "no.", "kind", "seam", "dihedral", "deposit", "filler", "current", "arc", "heat input", "gas");
        table.row(
                "each",
                "",
                "",
                any.seam().length().unit(),
                "deg",
                any.seam().depositVolume().unit(),
                any.filler().consumed().unit(),
                any.arc().current().unit(),
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
                    number(joint.arc().current().value(), 0),
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
                "",
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

    private static String angles(SeamAnswer.Angles range) {
        if (range == null) {
            return Figures.NONE;
        }
        String least = number(range.least().value(), 0);
        String greatest = number(range.greatest().value(), 0);
        return least.equals(greatest) ? least : least + "-" + greatest;
    }

    private void printProcedures() {
        Map<String, List<String>> marks = new LinkedHashMap<>();
        for (JointAnswer joint : answer.joints()) {
            if (joint.procedure() != null) {
                marks.computeIfAbsent(joint.procedure(), procedure -> new ArrayList<>())
                        .add(joint.mark());
            }
        }
        marks.forEach((procedure, joints) ->
                out.println(wrapped("Procedure " + procedure + ": " + String.join(", ", joints), WIDTH, "", "  ")));
    }

    private void printWork() {
        TotalsAnswer one = answer.perFrame();
        TotalsAnswer all = answer.forQuantity();
        Columns table = new Columns("lrr");
        table.row("Work and material", "a frame", "the order");
        table.row("", "h:min:s", "h:min:s");
        table.rule();
        double[] ofOne = seconds(one.labour());
        double[] ofAll = seconds(all.labour());
        table.row("arc, tacks included", time(ofOne[0]), time(ofAll[0]));
        table.row("handling at the joint", time(ofOne[1]), time(ofAll[1]));
        table.row("fit-up", time(ofOne[2]), time(ofAll[2]));
        table.row("set-up", time(ofOne[3]), time(ofAll[3]));
        if (one.preheat() != null) {
            boolean counted = one.labour().preheat().value() > 0;
            table.row("preheat", counted ? time(ofOne[4]) : "not counted", counted ? time(ofAll[4]) : "not counted");
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

    /** The parts of paid time in whole seconds. */
    private static double[] seconds(LabourAnswer labour) {
        return Figures.addingUp(
                labour.total().value(),
                0,
                labour.arc().value(),
                labour.handling().value(),
                labour.fitUp().value(),
                labour.setUp().value(),
                labour.preheat().value());
    }

    private void printGas() {
        GasAnswer one = answer.perFrame().gas();
        GasAnswer all = answer.forQuantity().gas();
        Columns table = new Columns("lrrr");
        table.row("Shielding gas, " + one.starts() + " starts a frame", "a frame", "the order", "share");
        table.rule();
        Map<String, Function<GasAnswer, Quantity>> parts = new LinkedHashMap<>();
        parts.put("while the arc burns", GasAnswer::arc);
        parts.put("pre-flow", GasAnswer::preFlow);
        parts.put("post-flow", GasAnswer::postFlow);
        parts.put("start surge (stored: " + withUnit(one.storedGas()) + ")", GasAnswer::startSurge);
        if (one.backPurge().value() > 0) {
            parts.put("back purge", GasAnswer::backPurge);
        }
        if (one.leak().value() > 0) {
            parts.put("leaks", GasAnswer::leak);
        }
        List<Quantity> ofOne =
                parts.values().stream().map(part -> part.apply(one)).toList();
        List<Quantity> ofAll =
                parts.values().stream().map(part -> part.apply(all)).toList();
        List<String> volumes = Figures.partsOf(one.total(), ofOne);
        List<String> volumesOfAll = Figures.partsOf(all.total(), ofAll);
        List<String> shares = Figures.shares(one.total(), ofOne);
        String unit = " " + one.total().unit();
        int row = 0;
        for (String what : parts.keySet()) {
            table.row(what, volumes.get(row) + unit, volumesOfAll.get(row) + unit, shares.get(row));
            row++;
        }
        table.rule();
        table.row(
                "gas",
                withUnit(one.total()),
                withUnit(all.total()),
                percent(one.total().value() == 0 ? 0 : 1));
        table.print(out);
    }

    private void printCost(CostAnswer cost) {
        Columns table = new Columns("lrrr");
        table.row("Price of the order, " + cost.heading(), "quantity", "rate", cost.currency());
        table.rule();
        for (CostAnswer.Line line : cost.lines()) {
            table.row(line.item(), quantity(line), rate(line), money(line.amount()));
        }
        table.rule();
        table.row("total", "", "", money(cost.total()));
        table.row("for one frame", "", "", money(cost.perFrame()));
        table.print(out);
    }

    private static String quantity(CostAnswer.Line line) {
        if (line.quantity() == null) {
            return "";
        }
        return WORKED_OUT.contains(line.item()) ? withUnit(line.quantity()) : Figures.asGiven(line.quantity());
    }

    private static String rate(CostAnswer.Line line) {
        if (line.rate() == null) {
            return "";
        }
        return line.quantity() == null && SHARES.containsKey(line.item())
                ? new BigDecimal(line.rate())
                                .movePointRight(2)
                                .stripTrailingZeros()
                                .toPlainString() + " % " + SHARES.get(line.item())
                : line.rate();
    }

    private void printAssumptions() {
        if (answer.assumptions().isEmpty()) {
            return;
        }
        out.println();
        out.println("Assumed, since it was left out:");
        for (GatheredAssumption assumption : GatheredAssumption.of(answer)) {
            out.println(wrapped(
                    assumption.field() + ": " + assumption.values() + " (" + assumption.because() + ")",
                    WIDTH,
                    "  ",
                    "    "));
        }
    }

    private void printBasis() {
        out.println();
        out.println(wrapped(
                "Arc time goes with the melting efficiency and may be 40 % off until that is fitted to the shop's own"
                        + " timed welds; the start surge is a computed one. The JSON form says what each figure rests on.",
                WIDTH, "", ""));
    }

    /** One entry a cause: the joints it stands on with the worst one's text; then the frame's own, then the shop's. */
    private void printCautions() {
        out.println();
        out.println("Cautions:");
        for (GatheredCaution caution : GatheredCaution.ofJoints(answer)) {
            out.println(wrapped(caution.joints() + ": " + caution.text(), WIDTH, "  ", "    "));
        }
        for (CautionAnswer caution : answer.cautions()) {
            out.println(wrapped(caution.text(), WIDTH, "  ", "    "));
            if (caution.cause().equals(LAST_OF_QUOTE)) {
                out.println();
                out.println("In the shop:");
            }
        }
    }
}
