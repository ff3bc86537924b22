package org.seamtally.metal;

import java.util.EnumMap;
import java.util.Map;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

/** Analyses that the tests share. */
final class Analyses {

    /** 4130 at the middle of SAE J404's limits. */
    static final Composition MID_4130 = of("C 0.305 Mn 0.50 Si 0.25 Cr 0.95 Mo 0.20");

    /** A typical ER70S-2 rod without its deoxidizers. */
    static final Composition ER70S_2 = of("C 0.05 Mn 1.15 Si 0.55");

    /** A typical ER80S-D2 rod. */
    static final Composition ER80S_D2 = of("C 0.09 Mn 1.85 Si 0.65 Mo 0.50");

    private Analyses() {}

    static Composition of(String text) {
        String[] words = text.split(" ");
        Map<Element, Double> shares = new EnumMap<>(Element.class);
        for (int i = 0; i < words.length; i += 2) {
            shares.put(Element.valueOf(words[i].toUpperCase(java.util.Locale.ROOT)), Double.valueOf(words[i + 1]));
        }
        return new Composition(shares);
    }
}
