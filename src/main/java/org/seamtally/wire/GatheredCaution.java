package org.seamtally.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A caution that stands on one joint or more, for people to read.
 *
 * @param cause a stable word
 * @param marks of the joints it stands on
 * @param text the worst joint's; where others have other figures it says whose these are
 */
public record GatheredCaution(String cause, List<String> marks, String text) {

    /** Cautions whose figure is an angle that gets worse as it gets narrower. */
    private static final Set<String> NARROWER_IS_WORSE = Set.of("narrow-dihedral");

    /** A number by itself: not one that is part of a name, such as those of ER70S-2 or EN ISO 15614-1. */
    private static final Pattern FIGURE = Pattern.compile("(?<![\\p{Alnum}.-])-?[0-9]+(\\.[0-9]+)?(?!-?\\p{Alnum})");

    /** What cautions have in common that one text can stand for: they say the same, of figures of their own. */
    private record Alike(String cause, String words) {

        static Alike of(CautionAnswer caution) {
            return new Alike(caution.cause(), FIGURE.matcher(caution.text()).replaceAll("#"));
        }
    }

    /** The joints' cautions, one for all that say the same, in the order they were met. */
    public static List<GatheredCaution> ofJoints(FrameEstimateAnswer answer) {
        return of(answer.joints().stream().flatMap(joint -> joint.cautions().stream()));
    }

    /** The same of the joints' cautions by themselves, in the joints' order. */
    static List<GatheredCaution> of(Stream<CautionAnswer> cautions) {
        Map<Alike, List<CautionAnswer>> alike = new LinkedHashMap<>();
        cautions.forEach(caution -> alike.computeIfAbsent(Alike.of(caution), words -> new ArrayList<>())
                .add(caution));
        return alike.values().stream().map(GatheredCaution::of).toList();
    }

    /** Marks of the joints it stands on, or the first and how many more. */
    public String joints() {
        return Marks.listed(marks);
    }

    private static GatheredCaution of(List<CautionAnswer> cautions) {
        List<String> marks =
                cautions.stream().map(CautionAnswer::joint).distinct().toList();
        boolean same = cautions.stream().map(CautionAnswer::text).distinct().count() == 1;
        CautionAnswer worst = worst(cautions);
        String figures = same ? "" : " (The figures are those of " + worst.joint() + ", the worst of them.)";
        return new GatheredCaution(worst.cause(), marks, worst.text() + figures);
    }

    /** The caution with the greatest of the first figure in which they differ; where the narrower is the worse, the least. */
    private static CautionAnswer worst(List<CautionAnswer> cautions) {
        boolean least = NARROWER_IS_WORSE.contains(cautions.get(0).cause());
        // the first of equals, so that the order sent decides
        return cautions.stream()
                .reduce((a, b) -> (least ? compare(a, b) : compare(b, a)) > 0 ? b : a)
                .orElseThrow();
    }

    private static int compare(CautionAnswer a, CautionAnswer b) {
        return Arrays.compare(figures(a.text()), figures(b.text()));
    }

    private static double[] figures(String text) {
        return FIGURE.matcher(text)
                .results()
                .mapToDouble(figure -> Double.parseDouble(figure.group()))
                .toArray();
    }
}
