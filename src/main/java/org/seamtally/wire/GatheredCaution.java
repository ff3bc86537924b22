package org.seamtally.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
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
    private static final Pattern FIGURE =
            Pattern.compile("(?=[-0-9])(?<![\\p{Alnum}.-])-?[0-9]+(\\.[0-9]+)?(?!-?\\p{Alnum})");

    /** What cautions have in common that one text can stand for: they say the same, of figures of their own. */
    private record Alike(String cause, String words) {}

    /** A text taken apart once, for all joints that have it: its words without the figures, and those. */
    private record Text(String words, double[] figures) {

        static Text of(String text) {
            List<Double> figures = new ArrayList<>();
            String words = FIGURE.matcher(text).replaceAll(figure -> {
                figures.add(Double.parseDouble(figure.group()));
                return "#";
            });
            return new Text(words, figures.stream().mapToDouble(each -> each).toArray());
        }
    }

    /** The joints' cautions, one for all that say the same, in the order they were met. */
    public static List<GatheredCaution> ofJoints(FrameEstimateAnswer answer) {
        return of(answer.joints().stream().flatMap(joint -> joint.cautions().stream()));
    }

    /** The same of the joints' cautions by themselves, in the joints' order. */
    static List<GatheredCaution> of(Stream<CautionAnswer> cautions) {
        Map<String, Text> texts = new HashMap<>();
        Map<Alike, List<CautionAnswer>> alike = new LinkedHashMap<>();
        cautions.forEach(caution -> {
            Text text = texts.computeIfAbsent(caution.text(), Text::of);
            alike.computeIfAbsent(new Alike(caution.cause(), text.words), words -> new ArrayList<>())
                    .add(caution);
        });
        return alike.values().stream().map(same -> of(same, texts)).toList();
    }

    /** Marks of the joints it stands on, or the first and how many more. */
    public String joints() {
        return Marks.listed(marks);
    }

    private static GatheredCaution of(List<CautionAnswer> cautions, Map<String, Text> texts) {
        List<String> marks =
                cautions.stream().map(CautionAnswer::joint).distinct().toList();
        boolean same = cautions.stream().map(CautionAnswer::text).distinct().count() == 1;
        CautionAnswer worst = worst(cautions, texts);
        String figures = same ? "" : " (The figures are those of " + worst.joint() + ", the worst of them.)";
        return new GatheredCaution(worst.cause(), marks, worst.text() + figures);
    }

    /** The caution with the greatest of the first figure in which they differ; where the narrower is the worse, the least. */
    private static CautionAnswer worst(List<CautionAnswer> cautions, Map<String, Text> texts) {
        boolean least = NARROWER_IS_WORSE.contains(cautions.get(0).cause());
        Comparator<CautionAnswer> byFigures =
                (a, b) -> Arrays.compare(texts.get(a.text()).figures, texts.get(b.text()).figures);
        // the first of equals, so that the order sent decides
        return cautions.stream()
                .reduce((a, b) -> (least ? byFigures.compare(a, b) : byFigures.compare(b, a)) > 0 ? b : a)
                .orElseThrow();
    }
}
