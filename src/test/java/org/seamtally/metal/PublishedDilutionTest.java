package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

class PublishedDilutionTest {

    /** Mass balance by hand: 40 g of 0.3 % Cr and 60 g of 1.0 % Cr hold 0.12 g + 0.60 g in 100 g. */
    @Test
    void chromiumBalancesByMass() {
        Composition mixed = Dilution.mix(Analyses.of("Cr 0.3"), Analyses.of("Cr 1.0"), 0.40);
        assertEquals(0.72, mixed.of(Element.CR), 1e-12);
    }

    /** Hand-derived: 0.35 of each figure of mid-range 4130 and 0.65 of typical ER70S-2. */
    @Test
    void thirtyFivePercentOf4130InEr70s2() {
        Composition mixed = Dilution.mix(Analyses.MID_4130, Analyses.ER70S_2, 0.35);
        assertEquals(0.13925, mixed.of(Element.C), 1e-12);
        assertEquals(0.9225, mixed.of(Element.MN), 1e-12);
        assertEquals(0.445, mixed.of(Element.SI), 1e-12);
        assertEquals(0.3325, mixed.of(Element.CR), 1e-12);
        assertEquals(0.070, mixed.of(Element.MO), 1e-12);
    }

    @Test
    void theEndsAreTheFillerAndTheBase() {
        assertEquals(
                Analyses.ER70S_2.of(Element.MN),
                Dilution.mix(Analyses.MID_4130, Analyses.ER70S_2, 0).of(Element.MN));
        assertEquals(
                Analyses.MID_4130.of(Element.CR),
                Dilution.mix(Analyses.MID_4130, Analyses.ER70S_2, 1).of(Element.CR));
    }

    @Test
    void onlyElementsThatOneOfTheTwoNamesAreNamed() {
        Composition mixed = Dilution.mix(Analyses.of("C 0.2 Cr 1"), Analyses.of("C 0.1 Mn 1"), 0.5);
        assertEquals(
                Set.of(Element.C, Element.CR, Element.MN), mixed.massPercent().keySet());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, 1.000001, Double.NaN, Double.POSITIVE_INFINITY})
    void aDilutionThatIsNoShareIsRefused(double dilution) {
        assertThrows(IllegalArgumentException.class, () -> Dilution.mix(Analyses.MID_4130, Analyses.ER70S_2, dilution));
    }

    /** Diluting twice by d is diluting once by d squared: what stays of the base is a share of a share. */
    @Test
    void dilutingTwiceMultipliesTheShares() {
        long seed = 4130;
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            double d = random.nextDouble();
            double once =
                    Dilution.mix(Analyses.MID_4130, Analyses.ER80S_D2, d * d).of(Element.MN);
            Composition first = Dilution.mix(Analyses.MID_4130, Analyses.ER80S_D2, d);
            double twice = Dilution.mix(first, Analyses.ER80S_D2, d).of(Element.MN);
            assertEquals(once, twice, 1e-12, "seed " + seed + ", dilution " + d);
        }
    }
}
