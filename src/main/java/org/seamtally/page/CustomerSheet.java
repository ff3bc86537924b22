package org.seamtally.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.seamtally.wire.CostAnswer;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.GasAnswer;
import org.seamtally.wire.GatheredAssumption;
import org.seamtally.wire.JointAnswer;
import org.seamtally.wire.LabourAnswer;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.SettingsAnswer;
import org.seamtally.wire.TotalsAnswer;

/**
 * What the customer's form is filled with.
 *
 * @param head number, date, frame
 * @param letterhead the shop's name and address; empty where none is set
 * @param validUntil the last day; empty where none was given
 * @param notes the shop's; empty where there are none
 * @param price empty cells where nothing is priced
 * @param joints kind, parts, fillet and seam of each; joints that are alike in one row
 * @param jointsAFrame how many joints a frame has
 * @param hours what is worked, for a frame and for the order
 * @param materials what is used, for a frame and for the order
 * @param gas where the order's goes, with its share
 * @param assumptions what was taken where nothing was given
 * @param cautions the joints' and the frame's
 * @param always what no figure says
 */
record CustomerSheet(
        Heading head,
        String letterhead,
        String validUntil,
        String notes,
        Price price,
        List<AlikeJoints> joints,
        long jointsAFrame,
        List<Row> hours,
        List<Row> materials,
        List<Row> gas,
        Halves<Assumed> assumptions,
        List<Said> cautions,
        List<Said> always) {

    /**
     * The price as the customer sees it: what it covers and what it comes to. The shop's rates, overhead and margin are its
     * own, and stay out: a decision of this project.
     *
     * @param scope such as "Welding only"; says so where nothing is priced
     * @param currency empty where nothing is priced
     * @param total for the order
     * @param perFrame for one frame
     * @param covers each item with its quantity
     */
    record Price(String scope, String currency, String total, String perFrame, List<Row> covers) {

        static Price of(CostAnswer cost, boolean inches) {
            if (cost == null) {
                return new Price("No price: this is an estimate of work and materials", "", "", "", List.of());
            }
            return new Price(
                    Wording.sentence(cost.heading()),
                    cost.currency(),
                    Wording.money(cost.total()),
                    Wording.money(cost.perFrame()),
                    covers(cost, inches));
        }

        /** Lines with a rate and no quantity are shares: overhead, margin and their like. */
        private static List<Row> covers(CostAnswer cost, boolean inches) {
            List<Row> rows = new ArrayList<>();
            for (CostAnswer.Line line : cost.lines()) {
                boolean share = line.quantity() == null && line.rate() != null;
                if (!share) {
                    rows.add(Row.of(
                            Wording.sentence(line.item()),
                            line.quantity() == null ? "" : Wording.worked(line.bought(inches))));
                }
            }
            return rows;
        }
    }

    static CustomerSheet of(PrintedQuote quote) {
        FrameEstimateAnswer answer = quote.answer();
        return new CustomerSheet(
                Heading.of(quote),
                quote.letterhead().orElse(""),
                quote.validUntil().map(Wording::day).orElse(""),
                quote.notes().orElse(""),
                Price.of(answer.cost(), Paper.inches(answer)),
                AlikeJoints.of(answer.joints(), CustomerSheet::joint),
                answer.joints().stream().mapToLong(JointAnswer::count).sum(),
                hours(answer.perFrame().labour(), answer.forQuantity().labour()),
                materials(answer.perFrame(), answer.forQuantity()),
                gas(answer.forQuantity().gas()),
                assumptions(answer),
                Said.toCustomer(answer),
                Said.always(answer));
    }

    /**
     * What was assumed on the same word.
     *
     * @param taken fields, each with what was taken for it
     * @param because on whose word
     */
    record Assumed(List<Row> taken, String because) {

        int letters() {
            return because.length()
                    + taken.stream()
                            .flatMap(row -> row.cells().stream())
                            .mapToInt(String::length)
                            .sum();
        }
    }

    private static Halves<Assumed> assumptions(FrameEstimateAnswer answer) {
        Map<String, List<Row>> byReason = new LinkedHashMap<>();
        for (GatheredAssumption a : GatheredAssumption.of(answer)) {
            byReason.computeIfAbsent(Wording.toCustomer(a.because()), because -> new ArrayList<>())
                    .add(Row.of(Wording.field(a.field()), Wording.truth(Wording.signs(a.values()))));
        }
        return Halves.of(
                byReason.entrySet().stream()
                        .map(entry -> new Assumed(entry.getValue(), entry.getKey()))
                        .toList(),
                Assumed::letters);
    }

    private static Row joint(JointAnswer joint) {
        SettingsAnswer settings = joint.settings();
        return Row.of(
                Wording.kind(joint.kind()),
                Wording.parts(settings.parts()),
                settings.steel(),
                settings.fillet() == null ? "–" : Wording.set(settings.fillet().leg()),
                joint.seam().meanSection() == null
                        ? "–"
                        : Wording.worked(joint.seam().length()));
    }

    private static List<Row> hours(LabourAnswer frame, LabourAnswer order) {
        Map<String, Function<LabourAnswer, Quantity>> parts = new LinkedHashMap<>();
        parts.put("Arc, tacks included", LabourAnswer::arc);
        parts.put("Handling at the joint", LabourAnswer::handling);
        parts.put("Fit-up", LabourAnswer::fitUp);
        parts.put("Set-up", LabourAnswer::setUp);
        if (frame.preheat().value() > 0) {
            parts.put("Preheat", LabourAnswer::preheat);
        }
        List<String> ofOne = Wording.hours(frame.total(), parts(parts, frame));
        List<String> ofAll = Wording.hours(order.total(), parts(parts, order));
        List<Row> rows = new ArrayList<>();
        for (String what : parts.keySet()) {
            rows.add(Row.of(what, ofOne.get(rows.size()), ofAll.get(rows.size())));
        }
        rows.add(Row.of("Hours in all", Wording.hours(frame.total()), Wording.hours(order.total())));
        return rows;
    }

    private static <T> List<Quantity> parts(Map<String, Function<T, Quantity>> parts, T whole) {
        return parts.values().stream().map(part -> part.apply(whole)).toList();
    }

    private static List<Row> materials(TotalsAnswer frame, TotalsAnswer order) {
        List<Row> rows = new ArrayList<>(List.of(
                worked("Seam", frame.seam().length(), order.seam().length()),
                worked("Filler", frame.filler().consumed(), order.filler().consumed()),
                worked("Gas", frame.gas().total(), order.gas().total()),
                worked("Electricity", frame.arc().energy(), order.arc().energy())));
        if (frame.preheat() != null) {
            rows.add(worked(
                    "Preheat, supplied",
                    frame.preheat().energy(),
                    order.preheat().energy()));
        }
        return rows;
    }

    private static Row worked(String what, Quantity one, Quantity all) {
        return Row.of(what, Wording.worked(one), Wording.worked(all));
    }

    private static List<Row> gas(GasAnswer order) {
        List<GasPart> used = Arrays.stream(GasPart.values())
                .filter(part -> part.of(order).value() > 0)
                .toList();
        List<Quantity> parts = used.stream().map(part -> part.of(order)).toList();
        List<String> volumes = Wording.parts(order.total(), parts);
        List<String> shares = Wording.shares(order.total(), parts);
        List<Row> rows = new ArrayList<>();
        for (GasPart part : used) {
            rows.add(Row.of(part.words(), volumes.get(rows.size()), shares.get(rows.size())));
        }
        return rows;
    }
}
