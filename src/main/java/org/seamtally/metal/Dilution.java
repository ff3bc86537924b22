package org.seamtally.metal;

import java.util.EnumMap;
import java.util.Map;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

/**
 * The weld metal's composition. Dilution is the base metal's share of the weld metal (AWS A3.0M:2010, fig. B.24(L)); each
 * element mixes by mass, losses in the arc left out.
 */
public final class Dilution {

    private Dilution() {}

    /**
     * Mixes molten base metal into filler.
     *
     * @param base analysis of the base metal
     * @param filler analysis of the filler
     * @param dilution share of base metal in the weld metal, 0 (filler alone) to 1 (no filler)
     * @return the weld metal's analysis, naming each element that either of the two names
     * @throws IllegalArgumentException where the dilution is not in 0 to 1
     */
    public static Composition mix(Composition base, Composition filler, double dilution) {
        if (!(dilution >= 0 && dilution <= 1)) {
            throw new IllegalArgumentException("dilution " + dilution + " is not a share from 0 to 1");
        }
        Map<Element, Double> mixed = new EnumMap<>(Element.class);
        for (Element element : Element.values()) {
            if (base.massPercent().containsKey(element) || filler.massPercent().containsKey(element)) {
                mixed.put(element, dilution * base.of(element) + (1 - dilution) * filler.of(element));
            }
        }
        return new Composition(mixed);
    }
}
