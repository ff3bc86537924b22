package org.seamtally.metal;

import static org.seamtally.catalogue.Element.C;
import static org.seamtally.catalogue.Element.CR;
import static org.seamtally.catalogue.Element.MN;
import static org.seamtally.catalogue.Element.MO;
import static org.seamtally.catalogue.Element.NI;
import static org.seamtally.catalogue.Element.SI;

import java.util.List;
import org.seamtally.catalogue.Composition;

/**
 * The temperature at which martensite starts to form on cooling, by two published formulas, both read in second-hand
 * second-hand copies.
 *
 * @param andrews K, by the linear formula of Andrews, J. Iron Steel Inst. 203 (1965) 721, meant for carbon up to 0.6 %
 * @param vanBohemen K, by van Bohemen, Mater. Sci. Technol. 28 (2012) 487, exponential in carbon
 * @param outside what lies outside the range of Andrews' formula; empty where the analysis lies within
 */
public record MartensiteStart(double andrews, double vanBohemen, List<String> outside) {

    private static final Range.OfElement RANGE = new Range.OfElement(C, 0, 0.6);

    /** Copies the list. */
    public MartensiteStart {
        outside = List.copyOf(outside);
    }

    /** Computes both for one analysis. */
    public static MartensiteStart of(Composition steel) {
        // Andrews (1965): no silicon, no cobalt; variants that have them are later
        double andrews = 539
                - 423 * steel.of(C)
                - 30.4 * steel.of(MN)
                - 17.7 * steel.of(NI)
                - 12.1 * steel.of(CR)
                - 7.5 * steel.of(MO);
        double vanBohemen = 565
                - (31 * steel.of(MN) + 13 * steel.of(SI) + 10 * steel.of(CR) + 18 * steel.of(NI) + 12 * steel.of(MO))
                - 600 * (1 - Math.exp(-0.96 * steel.of(C)));
        return new MartensiteStart(
                Celsius.toKelvin(andrews),
                Celsius.toKelvin(vanBohemen),
                RANGE.outside(steel).stream().toList());
    }
}
