package org.seamtally.metal;

import static org.seamtally.catalogue.Element.C;
import static org.seamtally.catalogue.Element.CR;
import static org.seamtally.catalogue.Element.MN;
import static org.seamtally.catalogue.Element.MO;
import static org.seamtally.catalogue.Element.NI;
import static org.seamtally.catalogue.Element.SI;
import static org.seamtally.catalogue.Element.V;

import java.util.List;
import org.seamtally.catalogue.Composition;

/**
 * Hardness of each structure of a low-alloy steel by its analysis and cooling rate: Maynier, Dollet and Bastien 1978,
 * equations read second-hand, range from memory.
 *
 * @param martensite HV
 * @param bainite HV
 * @param ferritePearlite HV
 * @param outside what lies outside the range; empty where the analysis lies within
 */
public record Maynier(double martensite, double bainite, double ferritePearlite, List<String> outside) {

    private static final List<Range.OfElement> RANGE = List.of(
            new Range.OfElement(C, 0.1, 0.5),
            new Range.OfElement(SI, 0, 1),
            new Range.OfElement(MN, 0, 2),
            new Range.OfElement(NI, 0, 4),
            new Range.OfElement(CR, 0, 3),
            new Range.OfElement(MO, 0, 1),
            new Range.OfElement(V, 0, 0.2));

    /** Copies the list. */
    public Maynier {
        outside = List.copyOf(outside);
    }

    /**
     * Computes the three hardnesses.
     *
     * @param steel its analysis
     * @param coolingTime t₈₅, s, above 0; the paper's rate, °C/h at 700 °C, is taken as the mean one from 800 to 500 °C, a
     *     decision of this project
     * @throws IllegalArgumentException where the cooling time cannot be
     */
    public static Maynier of(Composition steel, double coolingTime) {
        Given.positive("cooling time", coolingTime);
        double rate = 3600 * CoolingTime.SPAN / coolingTime;
        return atRate(steel, rate);
    }

    /** @param rate °C/h at 700 °C, the paper's V_r */
    static Maynier atRate(Composition steel, double rate) {
        double logRate = Math.log10(rate);
        double c = steel.of(C);
        double si = steel.of(SI);
        double mn = steel.of(MN);
        double ni = steel.of(NI);
        double cr = steel.of(CR);
        double mo = steel.of(MO);
        // the factor is 21; printings with 211 are misread
        double martensite = 127 + 949 * c + 27 * si + 11 * mn + 8 * ni + 16 * cr + 21 * logRate;
        double bainite = -323
                + 185 * c
                + 330 * si
                + 153 * mn
                + 65 * ni
                + 144 * cr
                + 191 * mo
                + (89 + 53 * c - 55 * si - 22 * mn - 10 * ni - 20 * cr - 33 * mo) * logRate;
        double ferritePearlite = 42
                + 223 * c
                + 53 * si
                + 30 * mn
                + 12.6 * ni
                + 7 * cr
                + 19 * mo
                + (10 - 19 * si + 4 * ni + 8 * cr + 130 * steel.of(V)) * logRate;
        List<String> outside = Range.OfElement.outside(RANGE, steel);
        return new Maynier(martensite, bainite, ferritePearlite, outside);
    }
}
