package org.seamtally.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A caution that stands on one joint or more, for people to read.
 *
 * @param cause a stable word
 * @param joints marks of the joints it stands on, or the first and how many more
 * @param text the worst joint's; where others have other figures it says whose these are
 */
public record GatheredCaution(String cause, String joints, String text) {

    /** Cautions whose figure is an angle that gets worse as it gets narrower. */
    private static final Set<String> NARROWER_IS_WORSE = Set.of("narrow-dihedral", "root-not-reached");

    private static final Pattern FIGURE = Pattern.compile("[0-9]+(\\.[0-9]+)?");

    /** The joints' cautions, one for each cause, in the order they were met. */
    public static List<GatheredCaution> ofJoints(FrameEstimateAnswer answer) {
        Map<String, List<CautionAnswer>> byCause = new LinkedHashMap<>();
        for (JointAnswer joint : answer.joints()) {
            for (CautionAnswer caution : joint.cautions()) {
                byCause.computeIfAbsent(caution.cause(), cause -> new ArrayList<>())
                        .add(caution);
            }
        }
        List<GatheredCaution> gathered = new ArrayList<>();
        byCause.forEach((cause, cautions) -> gathered.add(of(cause, cautions)));
        return gathered;
    }

    private static GatheredCaution of(String cause, List<CautionAnswer> cautions) {
        List<String> marks =
                cautions.stream().map(CautionAnswer::joint).distinct().toList();
        boolean alike = cautions.stream().map(CautionAnswer::text).distinct().count() == 1;
        CautionAnswer worst = worst(cause, cautions);
        String figures = alike ? "" : " (The figures are those of " + worst.joint() + ", the worst of them.)";
        return new GatheredCaution(cause, Marks.listed(marks), worst.text() + figures);
    }

    /** The caution with the greatest first figure in its text; where the narrower is the worse, the least. */
    private static CautionAnswer worst(String cause, List<CautionAnswer> cautions) {
        Comparator<CautionAnswer> byFigure = Comparator.comparingDouble(caution -> firstFigure(caution.text()));
        Comparator<CautionAnswer> order = NARROWER_IS_WORSE.contains(cause) ? byFigure.reversed() : byFigure;
        // the first of equals, so that the order sent decides
        return cautions.stream()
                .reduce((a, b) -> order.compare(b, a) > 0 ? b : a)
                .orElseThrow();
    }

    private static double firstFigure(String text) {
        Matcher figure = FIGURE.matcher(text);
        return figure.find() ? Double.parseDouble(figure.group()) : 0;
    }
}
