package org.seamtally.metal;

import static org.seamtally.catalogue.Element.B;
import static org.seamtally.catalogue.Element.C;
import static org.seamtally.catalogue.Element.CR;
import static org.seamtally.catalogue.Element.CU;
import static org.seamtally.catalogue.Element.MN;
import static org.seamtally.catalogue.Element.MO;
import static org.seamtally.catalogue.Element.NB;
import static org.seamtally.catalogue.Element.NI;
import static org.seamtally.catalogue.Element.SI;
import static org.seamtally.catalogue.Element.TI;
import static org.seamtally.catalogue.Element.V;

import java.util.List;
import org.seamtally.catalogue.Composition;

/**
 * The three carbon equivalents in use, side by side, each with the range it is meant for: outside it, another one speaks.
 *
 * @param iiw CE(IIW)
 * @param cet CET of EN 1011-2 annex C
 * @param pcm Pcm of Ito and Bessyo
 */
public record CarbonEquivalents(CarbonEquivalent iiw, CarbonEquivalent cet, CarbonEquivalent pcm) {

    /** The carbon content that parts the ranges of CE(IIW) and Pcm: 0.18 % by IIW practice, from memory. */
    private static final double PARTING_CARBON = 0.18;

    /** EN 1011-2:2001 annex C, C.3.2.1: carbon read second-hand, the others from memory. */
    private static final List<Range.OfElement> CET_RANGE = List.of(
            new Range.OfElement(C, 0.05, 0.32),
            new Range.OfElement(SI, 0, 0.8),
            new Range.OfElement(MN, 0.5, 1.9),
            new Range.OfElement(CR, 0, 1.5),
            new Range.OfElement(CU, 0, 0.7),
            new Range.OfElement(MO, 0, 0.75),
            new Range.OfElement(NB, 0, 0.06),
            new Range.OfElement(NI, 0, 2.5),
            new Range.OfElement(TI, 0, 0.12),
            new Range.OfElement(V, 0, 0.18),
            new Range.OfElement(B, 0, 0.005));

    /** Computes all three for one analysis. */
    public static CarbonEquivalents of(Composition steel) {
        return new CarbonEquivalents(iiw(steel), cet(steel), pcm(steel));
    }

    /**
     * CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15: International Institute of Welding, in EN 1011-2:2001 annex C.2,
     * from memory. Meant for carbon of 0.18 % and more.
     */
    private static CarbonEquivalent iiw(Composition steel) {
        double value = steel.of(C)
                + steel.of(MN) / 6
                + (steel.of(CR) + steel.of(MO) + steel.of(V)) / 5
                + (steel.of(NI) + steel.of(CU)) / 15;
        return new CarbonEquivalent(
                "CE(IIW)",
                value,
                "C 0.18 % and more",
                new Range.OfElement(C, PARTING_CARBON, 100)
                        .outside(steel).stream().toList());
    }

    /** CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40: EN 1011-2:2001 annex C.3.2.1, from memory. */
    private static CarbonEquivalent cet(Composition steel) {
        double value = steel.of(C)
                + (steel.of(MN) + steel.of(MO)) / 10
                + (steel.of(CR) + steel.of(CU)) / 20
                + steel.of(NI) / 40;
        List<String> outside = Range.OfElement.outside(CET_RANGE, steel);
        return new CarbonEquivalent("CET", value, "C 0.05 to 0.32 %, Mn 0.5 to 1.9 %, low alloy", outside);
    }

    /**
     * Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5B: Ito and Bessyo 1968, IIW document IX-576-68, from
     * memory. Meant for carbon of 0.18 % and less.
     */
    private static CarbonEquivalent pcm(Composition steel) {
        double value = steel.of(C)
                + steel.of(SI) / 30
                + (steel.of(MN) + steel.of(CU) + steel.of(CR)) / 20
                + steel.of(NI) / 60
                + steel.of(MO) / 15
                + steel.of(V) / 10
                + 5 * steel.of(B);
        return new CarbonEquivalent(
                "Pcm",
                value,
                "C 0.18 % and less",
                new Range.OfElement(C, 0, PARTING_CARBON)
                        .outside(steel).stream().toList());
    }
}
