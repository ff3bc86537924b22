package org.seamtally.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamtally.frame.FrameCautions;
import org.seamtally.wire.CautionAnswer;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.GatheredCaution;

/**
 * A caution on paper.
 *
 * @param about the joints it stands on; empty where it is the whole frame's
 * @param text plain words
 */
record Said(String about, String text) {

    /** The frame's cautions that name money, or the lack of it. */
    private static final Set<String> OF_MONEY = Set.of("preheat-advised", "not-priced");

    private static final Set<String> ALWAYS =
            FrameCautions.always().stream().map(caution -> caution.cause()).collect(Collectors.toSet());

    private static final Set<String> OF_SHOP =
            FrameCautions.ofShop().stream().map(caution -> caution.cause()).collect(Collectors.toSet());

    /** What no figure here says: that no load was considered, that this is no procedure. */
    static List<Said> always(FrameEstimateAnswer answer) {
        return ofFrame(answer, caution -> ALWAYS.contains(caution.cause())).toList();
    }

    /** What a customer reads: the joints' cautions and the frame's, without the shop's. */
    static List<Said> toCustomer(FrameEstimateAnswer answer) {
        List<Said> said = ofJoints(answer);
        ofFrame(answer, caution -> !ALWAYS.contains(caution.cause()) && !OF_SHOP.contains(caution.cause()))
                .forEach(said::add);
        return said;
    }

    /** What the shop floor reads of this frame: no money in it. */
    static List<Said> toShopFloor(FrameEstimateAnswer answer) {
        List<Said> said = ofJoints(answer);
        ofFrame(
                        answer,
                        caution -> !ALWAYS.contains(caution.cause())
                                && !OF_SHOP.contains(caution.cause())
                                && !OF_MONEY.contains(caution.cause()))
                .forEach(said::add);
        return said;
    }

    /** What a shop keeps in mind whatever it welds. */
    static List<Said> ofShop(FrameEstimateAnswer answer) {
        return ofFrame(answer, caution -> OF_SHOP.contains(caution.cause())).toList();
    }

    private static List<Said> ofJoints(FrameEstimateAnswer answer) {
        return GatheredCaution.ofJoints(answer).stream()
                .map(caution -> new Said(caution.joints(), caution.text()))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static Stream<Said> ofFrame(FrameEstimateAnswer answer, Predicate<CautionAnswer> which) {
        return answer.cautions().stream().filter(which).map(caution -> new Said("", caution.text()));
    }
}
