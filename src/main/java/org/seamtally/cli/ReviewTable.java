package org.seamtally.cli;

import static org.seamtally.wire.Figures.four;
import static org.seamtally.wire.Figures.number;
import static org.seamtally.wire.Figures.withUnit;
import static org.seamtally.wire.Figures.wrapped;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamtally.wire.AnalysisAnswer;
import org.seamtally.wire.AssumptionAnswer;
import org.seamtally.wire.BaseReviewAnswer;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.Figures;
import org.seamtally.wire.FillerReviewAnswer;
import org.seamtally.wire.HardnessAnswer;
import org.seamtally.wire.PreheatAdviceAnswer;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.SteelReviewAnswer;

/** A review on a terminal or a sheet of paper, 100 columns wide: what to take first, then the figures it rests on. */
final class ReviewTable {

    private static final int WIDTH = 100;

    private final SteelReviewAnswer answer;
    private final PrintWriter out;

    ReviewTable(SteelReviewAnswer answer, PrintWriter out) {
        this.answer = answer;
        this.out = out;
    }

    void print() {
        printHeading();
        printChoice();
        out.println();
        printFillers();
        out.println();
        printBase();
        out.println();
        printMethods();
        printAssumptions();
        printCautions();
        out.println();
        out.println(wrapped(answer.youngsModulus().text(), WIDTH, "", ""));
        out.println();
        out.println("seamtally " + answer.engine().version() + ", catalogue "
                + answer.engine().catalogue());
    }

    private void printHeading() {
        SteelReviewAnswer.Conditions how = answer.conditions();
        out.println(wrapped(
                "Base " + answer.base().name() + ", wall " + plain(how.wall()) + ", " + how.shape() + ", dilution "
                        + number(100 * how.dilution(), 0) + " %, arc energy " + plain(how.arcEnergy()) + ", from "
                        + plain(how.startTemperature()) + ", hydrogen " + plain(how.hydrogen()) + ", restraint "
                        + how.restraint(),
                WIDTH,
                "",
                ""));
        out.println();
    }

    /** Which to take and why. */
    private void printChoice() {
        FillerReviewAnswer first = answer.fillers().get(0);
        out.println((answer.fillers().size() == 1 ? "Filler: " : "Take ") + first.filler() + ", "
                + preheat(first.preheat()) + ".");
        for (FillerReviewAnswer.Why why : first.reasons()) {
            out.println(wrapped(why.text(), WIDTH, "  ", "    "));
        }
        for (FillerReviewAnswer other :
                answer.fillers().subList(1, answer.fillers().size())) {
            String cracking = other.cautionedForCracking() ? ", cautioned for cracking" : "";
            out.println(other.rank() + ". " + other.filler() + ", " + preheat(other.preheat()) + cracking + ".");
            other.reasons().stream()
                    .filter(why -> !why.step().equals("preheat")
                            || !why.text().equals(first.preheat().why()))
                    .forEach(why -> out.println(wrapped(why.text(), WIDTH, "  ", "    ")));
        }
    }

    private static String preheat(PreheatAdviceAnswer preheat) {
        return preheat.advised() == null
                ? "no preheat"
                : "preheat to " + number(preheat.advised().value(), 0) + " "
                        + preheat.advised().unit();
    }

    private void printFillers() {
        Columns table = new Columns("lrrrrrrrrrr");
        Quantity diameter = answer.base().idealDiameter().diameter();
        Quantity strength = answer.fillers().stream()
                .map(FillerReviewAnswer::leastTensileStrength)
                .filter(java.util.Objects::nonNull)
                .findFirst()
                .orElse(null);
        table.row("Weld metal", "C", "Mn", "Cr", "Mo", "CE(IIW)", "CET", "Pcm", "ideal dia.", "Ms", "rod, min.");
        table.row(
                "diluted",
                "%",
                "%",
                "%",
                "%",
                "%",
                "%",
                "%",
                diameter.unit(),
                answer.base().martensiteStart().andrews().unit(),
                strength == null ? "" : strength.unit());
        table.rule();
        for (FillerReviewAnswer filler : answer.fillers()) {
            analysis(table, filler.filler(), filler.weldMetal(), filler.leastTensileStrength());
        }
        table.rule();
        BaseReviewAnswer base = answer.base();
        analysis(
                table,
                "the tube",
                new AnalysisAnswer(
                        base.composition(), base.carbonEquivalents(), base.idealDiameter(), base.martensiteStart()),
                base.leastTensileStrength());
        table.print(out);
        out.println("* outside the range the formula is meant for");
    }

    private static void analysis(Columns table, String name, AnalysisAnswer analysis, Quantity strength) {
        table.row(
                name,
                share(analysis.composition(), "C"),
                share(analysis.composition(), "Mn"),
                share(analysis.composition(), "Cr"),
                share(analysis.composition(), "Mo"),
                equivalent(analysis, "CE(IIW)"),
                equivalent(analysis, "CET"),
                equivalent(analysis, "Pcm"),
                four(analysis.idealDiameter().diameter())
                        + (analysis.idealDiameter().insideRange() ? "" : "*"),
                number(analysis.martensiteStart().andrews().value(), 0),
                strength == null ? Figures.NONE : number(strength.value(), 0));
    }

    private static String share(Map<String, Double> composition, String element) {
        return number(composition.getOrDefault(element, 0.0), 3);
    }

    /** An asterisk marks what lies outside the range it is meant for. */
    private static String equivalent(AnalysisAnswer analysis, String symbol) {
        AnalysisAnswer.Equivalent equivalent = analysis.equivalent(symbol).orElseThrow();
        return number(equivalent.value(), 3) + (equivalent.insideRange() ? "" : "*");
    }

    private void printBase() {
        BaseReviewAnswer base = answer.base();
        out.println(
                "Beside the seam, welded from " + plain(answer.conditions().startTemperature()) + " without preheat");
        Columns table = new Columns("lr");
        table.row(
                "t8/5 (" + base.cooling().regime() + "; fast bound "
                        + withUnit(base.cooling().fastBound()) + ")",
                withUnit(base.cooling().t85()));
        table.row(
                "cooling at 700 °C / 540 °C",
                number(base.cooling().rateAt700().value(), 0) + " / "
                        + whole(base.cooling().rateAt540()));
        table.row("hardness, Maynier et al. / Yurioka et al.", hardness(base.hardness()));
        table.row("martensite", number(100 * base.hardness().martensiteShare(), 0) + " %");
        if (base.softenedZone() != null && base.softenedZone().least() != null) {
            table.row(
                    "softened zone, tensile strength",
                    number(base.softenedZone().least().value(), 0) + " to "
                            + withUnit(base.softenedZone().greatest()));
        }
        table.print(out);
    }

    private static String hardness(HardnessAnswer hardness) {
        return number(hardness.maynier().value(), 0) + " / "
                + number(hardness.yurioka().value(), 0) + " "
                + hardness.yurioka().unit();
    }

    private void printMethods() {
        Columns table = new Columns("lrrrrr");
        table.row("Preheat", "EN 1011-2 B", "AWS D1.1 H", "advised", "t8/5 then", "hardness then");
        table.rule();
        boolean outside = false;
        for (FillerReviewAnswer filler : answer.fillers()) {
            PreheatAdviceAnswer preheat = filler.preheat();
            PreheatAdviceAnswer.After after = preheat.after();
            table.row(
                    filler.filler(),
                    asked(preheat.methods().get(0)),
                    asked(preheat.methods().get(1)),
                    preheat.advised() == null ? "none" : whole(preheat.advised()),
                    after == null ? Figures.NONE : withUnit(after.t85()),
                    after == null ? Figures.NONE : hardness(after.hardness()));
            outside |= preheat.methods().stream().anyMatch(method -> !method.insideRange());
        }
        table.print(out);
        if (outside) {
            out.println("* outside its range:");
        }
        methodsOutside()
                .forEach((text, names) -> out.println(wrapped(
                        text + (names.size() == answer.fillers().size() ? "" : " (" + String.join(", ", names) + ")"),
                        WIDTH,
                        "  ",
                        "    ")));
    }

    /** What lies outside, with the fillers it is said of. */
    private Map<String, List<String>> methodsOutside() {
        Map<String, List<String>> texts = new LinkedHashMap<>();
        for (FillerReviewAnswer filler : answer.fillers()) {
            for (PreheatAdviceAnswer.Method method : filler.preheat().methods()) {
                if (!method.insideRange()) {
                    texts.computeIfAbsent(
                                    method.name() + ": " + String.join("; ", method.outside()),
                                    text -> new ArrayList<>())
                            .add(filler.filler());
                }
            }
        }
        return texts;
    }

    private static String asked(PreheatAdviceAnswer.Method method) {
        return (method.temperature() == null ? "none" : whole(method.temperature()))
                + (method.insideRange() ? "" : "*");
    }

    /** A quantity that was sent, without digits that nobody sent. */
    private static String plain(Quantity quantity) {
        String value = BigDecimal.valueOf(quantity.value())
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString();
        return value + " " + quantity.unit();
    }

    private static String whole(Quantity quantity) {
        return number(quantity.value(), 0) + " " + quantity.unit();
    }

    private void printAssumptions() {
        if (answer.assumptions().isEmpty()) {
            return;
        }
        out.println();
        out.println("Assumed, since it was left out:");
        for (AssumptionAnswer assumption : answer.assumptions()) {
            out.println(wrapped(
                    assumption.path() + " = " + assumption.value() + " (" + assumption.because() + ")",
                    WIDTH,
                    "  ",
                    "    "));
        }
    }

    private void printCautions() {
        out.println();
        out.println("Cautions:");
        for (CautionAnswer caution : answer.base().cautions()) {
            out.println(wrapped(caution.text(), WIDTH, "  ", "    "));
        }
        Map<String, List<String>> fillers = new LinkedHashMap<>();
        for (FillerReviewAnswer filler : answer.fillers()) {
            for (CautionAnswer caution : filler.cautions()) {
                fillers.computeIfAbsent(caution.text(), text -> new ArrayList<>())
                        .add(filler.filler());
            }
        }
        fillers.forEach(
                (text, names) -> out.println(wrapped(String.join(", ", names) + ": " + text, WIDTH, "  ", "    ")));
        for (CautionAnswer caution : answer.cautions()) {
            out.println(wrapped(caution.text(), WIDTH, "  ", "    "));
        }
    }
}
