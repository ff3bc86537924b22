package org.seamtally.page;

import java.util.List;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.JointAnswer;
import org.seamtally.wire.SettingsAnswer;
import org.seamtally.wire.TotalsAnswer;

/**
 * What the shop floor's form is filled with: what to set at each joint, and no money.
 *
 * @param head number, date, frame
 * @param joints what to set at each; joints that are set alike in one row
 * @param draw what to draw from the store, for a frame and for the order
 * @param cautions the joints' and the frame's
 * @param shop what a shop keeps in mind whatever it welds
 * @param always what no figure says
 */
record ShopFloorSheet(
        Heading head,
        List<AlikeJoints> joints,
        List<Row> draw,
        List<Said> cautions,
        Halves<Said> shop,
        List<Said> always) {

    static ShopFloorSheet of(PrintedQuote quote) {
        FrameEstimateAnswer answer = quote.answer();
        return new ShopFloorSheet(
                Heading.of(quote),
                AlikeJoints.of(answer.joints(), ShopFloorSheet::joint),
                draw(answer.perFrame(), answer.forQuantity()),
                Said.toShopFloor(answer),
                Halves.of(Said.ofShop(answer), said -> said.text().length()),
                Said.always(answer));
    }

    private static Row joint(JointAnswer joint) {
        SettingsAnswer settings = joint.settings();
        SettingsAnswer.GasSetting gas = settings.gas();
        return Row.of(
                Wording.kind(joint.kind()) + ", " + settings.steel() + "\n" + Wording.parts(settings.parts()),
                joint.procedure() == null ? "–" : joint.procedure(),
                fillet(settings.fillet()),
                Wording.set(joint.arc().current()),
                settings.filler().classification() + "\n"
                        + Wording.set(settings.filler().diameter()),
                gas.mixture() + "\n" + Wording.set(gas.flow()) + "\nnozzle " + Wording.set(gas.nozzleDiameter())
                        + purge(settings.backPurge()),
                "pre " + Wording.time(gas.preFlow()) + "\npost " + Wording.time(gas.postFlow()),
                joint.tacks()
                        + (joint.tacks() == 1 ? " tack\n" : " tacks\n")
                        + joint.segments()
                        + (joint.segments() == 1 ? " run" : " runs"),
                preheat(settings.preheat()));
    }

    private static String fillet(SettingsAnswer.FilletSetting fillet) {
        if (fillet == null) {
            return "fill the hole";
        }
        return "leg " + Wording.set(fillet.leg()) + "\n" + fillet.face()
                + (fillet.rootGap().value() > 0 ? "\ngap " + Wording.set(fillet.rootGap()) : "");
    }

    private static String purge(SettingsAnswer.PurgeSetting purge) {
        return purge == null
                ? ""
                : "\nback purge " + Wording.set(purge.flow()) + "\n" + Wording.time(purge.time()) + " before the arc";
    }

    private static String preheat(SettingsAnswer.PreheatSetting preheat) {
        if (preheat == null) {
            return "none";
        }
        return Wording.set(preheat.temperature()) + "\n" + Wording.set(preheat.zone()) + " beyond the joint"
                + (preheat.hold().value() > 0 ? "\nhold " + Wording.time(preheat.hold()) : "") + "\n"
                + preheat.source();
    }

    private static List<Row> draw(TotalsAnswer frame, TotalsAnswer order) {
        return List.of(
                Row.of(
                        "Filler rod",
                        Wording.worked(frame.filler().consumed()),
                        Wording.worked(order.filler().consumed()) + ", "
                                + Math.round(order.filler().rods()) + " rods"),
                Row.of(
                        "Gas",
                        Wording.worked(frame.gas().total()),
                        Wording.worked(order.gas().total())),
                Row.of(
                        "Hours, all work",
                        Wording.hours(frame.labour().total()),
                        Wording.hours(order.labour().total())));
    }
}
