package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Fillets in skewed joints: D. K. Miller, "Designing Fillet Welds for Skewed T-joints, Part 1", Welding Innovation: 60°
 * to 135°, and a smaller throat on the wider side. The table is the geometry of equal legs w and a flat face: t = w
 * cos(ψ/2), A = ½ w² sin ψ = t² tan(ψ/2).
 */
class PublishedSkewedFilletTest {

    private static final double LEG = 5e-3;

    @ParameterizedTest(name = "{0}°: throat {1} w, area {2} w² = {3} t²")
    @CsvSource({
        "60, .86603, .43301, .57735",
        "75, .79335, .48296, .76733",
        "90, .70711, .50000, 1",
        "105, .60876, .48296, 1.30323",
        "120, .50000, .43301, 1.73205",
        "135, .38268, .35355, 2.41421"
    })
    void throatAndAreaFollowTheSkew(double degrees, double throat, double area, double areaByThroat) {
        Seam seam =
                new PlateFillet(10e-3, 0.25, Math.toRadians(degrees), DepositSection.ofLeg(LEG, 0, Face.FLAT)).seam();
        double t = seam.course().orElseThrow().leastThroat().orElseThrow();
        assertEquals(throat, t / LEG, 5.1e-6);
        assertEquals(area, seam.meanSection() / (LEG * LEG), 5.1e-6);
        assertEquals(areaByThroat, seam.meanSection() / (t * t), 5.1e-6);
    }

    /** AWS D1.1, skewed joints: fillets from 60° to 135°. */
    @Test
    void theFilletsRangeIsThatOfSkewedJoints() {
        assertEquals(60, Math.toDegrees(DepositSection.NARROWEST_FILLET), 1e-12);
        assertEquals(135, Math.toDegrees(DepositSection.WIDEST_FILLET), 1e-12);
    }

    /** A gap and a hollow: by hand for legs 3 and 4 mm at 90°, the face 5 mm wide: 3 · 4/5 = 2.4 mm, less 0.1 · 5. */
    @Test
    void unequalLegsWithAHollowFace() {
        DepositSection hollow = new DepositSection(3e-3, 4e-3, 0, new Face(Face.Form.CONCAVE, 0.10));
        assertEquals(1.9e-3, hollow.effectiveThroat(Math.PI / 2), 1e-15);
        DepositSection bulging = new DepositSection(3e-3, 4e-3, 0, new Face(Face.Form.CONVEX, 0.25));
        assertEquals(2.4e-3, bulging.effectiveThroat(Math.PI / 2), 1e-15);
        // the branch's leg is 3 mm and its gap 1 mm: the face as before, the metal of the gap not counted
        DepositSection gapped = new DepositSection(3e-3, 3e-3, 1e-3, Face.FLAT);
        assertEquals(1.8e-3, gapped.effectiveThroat(Math.PI / 2), 1e-15);
    }
}
