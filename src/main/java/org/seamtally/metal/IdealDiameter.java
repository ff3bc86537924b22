package org.seamtally.metal;

import static org.seamtally.catalogue.Element.B;
import static org.seamtally.catalogue.Element.C;
import static org.seamtally.catalogue.Element.CR;
import static org.seamtally.catalogue.Element.CU;
import static org.seamtally.catalogue.Element.MN;
import static org.seamtally.catalogue.Element.MO;
import static org.seamtally.catalogue.Element.NI;
import static org.seamtally.catalogue.Element.SI;
import static org.seamtally.catalogue.Element.V;
import static org.seamtally.catalogue.Element.ZR;

import java.util.List;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

/**
 * Ideal critical diameter by the multiplying factors of ASTM A255-10(2014) for non-boron steel of grain size 7, read in a
 * public second-hand copy: the bar that hardens to half martensite at its centre in an ideal quench. A comparison of
 * hardenability, not a property of the joint.
 *
 * @param diameter m
 * @param factors the carbon base (in inches) and each element's factor, in the order of the standard
 * @param outside what lies outside the range the standard gives; empty where the analysis lies within
 */
public record IdealDiameter(double diameter, List<Factor> factors, List<String> outside) {

    /** ASTM A255, scope: the analyses for which the calculation is meant. */
    private static final List<Range.OfElement> RANGE = List.of(
            new Range.OfElement(C, 0.10, 0.70),
            new Range.OfElement(MN, 0.50, 1.65),
            new Range.OfElement(SI, 0.15, 0.60),
            new Range.OfElement(NI, 0, 1.50),
            new Range.OfElement(CR, 0, 1.35),
            new Range.OfElement(MO, 0, 0.55));

    /** From this share on, mass per cent, boron steels are made on purpose and the standard gives them a factor more. */
    private static final double BORON_STEEL = 0.0005;

    /**
     * One multiplying factor.
     *
     * @param element whose
     * @param value in inches for carbon, a pure number for the others
     */
    public record Factor(Element element, double value) {}

    /** Copies the lists. */
    public IdealDiameter {
        factors = List.copyOf(factors);
        outside = List.copyOf(outside);
    }

    /** Whether the analysis lies in the range the standard gives. */
    public boolean insideRange() {
        return outside.isEmpty();
    }

    /** Computes it for one analysis; outside the range the factors' own equations are carried on and the answer says so. */
    public static IdealDiameter of(Composition steel) {
        List<Factor> factors = List.of(
                new Factor(C, carbon(steel.of(C))),
                new Factor(MN, manganese(steel.of(MN))),
                new Factor(SI, 1 + 0.70 * steel.of(SI)),
                new Factor(NI, nickel(steel.of(NI))),
                new Factor(CR, 1 + 2.16 * steel.of(CR)),
                new Factor(MO, 1 + 3.00 * steel.of(MO)),
                new Factor(CU, 1 + 0.365 * steel.of(CU)),
                new Factor(V, 1 + 1.73 * steel.of(V)),
                new Factor(ZR, 1 + 2.5 * steel.of(ZR)));
        double inches = factors.stream().mapToDouble(Factor::value).reduce(1, (a, b) -> a * b);
        return new IdealDiameter(inches * Customary.METRES_AN_INCH, factors, outside(steel));
    }

    /** In inches. The last piece is printed up to 0.90 % C and carried on above. */
    private static double carbon(double c) {
        if (c <= 0.39) {
            return 0.54 * c;
        }
        if (c <= 0.55) {
            return 0.171 + 0.001 * c + 0.265 * c * c;
        }
        if (c <= 0.65) {
            return 0.115 + 0.268 * c - 0.038 * c * c;
        }
        if (c <= 0.75) {
            return 0.143 + 0.2 * c;
        }
        return 0.062 + 0.409 * c - 0.135 * c * c;
    }

    /** Printed up to 1.95 % Mn, carried on above. */
    private static double manganese(double mn) {
        return mn <= 1.20 ? 3.3333 * mn + 1 : 5.10 * mn - 1.12;
    }

    /** Printed up to 3.5 % Ni, carried on above. */
    private static double nickel(double ni) {
        return ni <= 1.5 ? 1 + 0.363 * ni : 0.3211 + 1.4501 * ni - 0.6119 * ni * ni + 0.1253 * ni * ni * ni;
    }

    private static List<String> outside(Composition steel) {
        List<String> outside = Range.OfElement.outside(RANGE, steel);
        if (steel.of(B) >= BORON_STEEL) {
            outside.add("a boron steel: the standard gives it a factor more, which is not taken here");
        }
        return outside;
    }
}
