package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Hand-derived from the formulas of EN 1011-2:2001 annex C and of Ito and Bessyo 1968, both from memory. */
class PublishedCarbonEquivalentsTest {

    @ParameterizedTest
    @CsvSource({
        // analysis, CET, CE(IIW), Pcm: by hand
        "C 0.305 Mn 0.50 Si 0.25 Cr 0.95 Mo 0.20, 0.4225, 0.618333, 0.399167",
        "C 0.33 Mn 0.60 Si 0.35 Cr 1.10 Mo 0.25, 0.4700, 0.700000, 0.443333",
        "C 0.20 Mn 0.45, 0.2450, 0.275000, 0.222500",
        "C 0.25 Mn 0.75, 0.3250, 0.375000, 0.287500",
        // one element at a time, 6 % or a like round figure: its weight alone
        "V 1, 0, 0.2, 0.1",
        "Ni 6, 0.15, 0.4, 0.1",
        "Cu 3, 0.15, 0.2, 0.15",
        "B 0.01, 0, 0, 0.05",
        "Si 0.6, 0, 0, 0.02",
        "Mo 3, 0.3, 0.6, 0.2",
        "Cr 2, 0.1, 0.4, 0.1"
    })
    void carbonEquivalents(String analysis, double cet, double iiw, double pcm) {
        CarbonEquivalents found = CarbonEquivalents.of(Analyses.of(analysis));
        assertEquals(cet, found.cet().value(), 1e-6);
        assertEquals(iiw, found.iiw().value(), 1e-6);
        assertEquals(pcm, found.pcm().value(), 1e-6);
    }

    @Test
    void eachIsNamed() {
        CarbonEquivalents found = CarbonEquivalents.of(Analyses.MID_4130);
        assertEquals("CET", found.cet().symbol());
        assertEquals("CE(IIW)", found.iiw().symbol());
        assertEquals("Pcm", found.pcm().symbol());
        assertTrue(found.pcm().meantFor().contains("0.18"));
        assertTrue(found.iiw().meantFor().contains("0.18"));
        assertTrue(found.cet().meantFor().contains("0.05 to 0.32"));
    }

    /** 0.18 % carbon parts the ranges of CE(IIW) and Pcm (IIW practice, from memory); both take 0.18 itself. */
    @Test
    void carbonParts() {
        CarbonEquivalents at = CarbonEquivalents.of(Analyses.of("C 0.18 Mn 1"));
        assertTrue(at.iiw().insideRange());
        assertTrue(at.pcm().insideRange());
        CarbonEquivalents below = CarbonEquivalents.of(Analyses.of("C 0.1799 Mn 1"));
        assertFalse(below.iiw().insideRange());
        assertTrue(below.pcm().insideRange());
        CarbonEquivalents above = CarbonEquivalents.of(Analyses.of("C 0.1801 Mn 1"));
        assertTrue(above.iiw().insideRange());
        assertFalse(above.pcm().insideRange());
    }

    /** The range of CET in EN 1011-2:2001 C.3.2.1, each element at its ends (from memory). */
    @ParameterizedTest
    @CsvSource({
        "C 0.05 Mn 0.5, C 0.0499 Mn 0.5",
        "C 0.32 Mn 0.5, C 0.3201 Mn 0.5",
        "C 0.2 Mn 0.5, C 0.2 Mn 0.499",
        "C 0.2 Mn 1.9, C 0.2 Mn 1.901",
        "C 0.2 Mn 1 Si 0.8, C 0.2 Mn 1 Si 0.801",
        "C 0.2 Mn 1 Cr 1.5, C 0.2 Mn 1 Cr 1.501",
        "C 0.2 Mn 1 Cu 0.7, C 0.2 Mn 1 Cu 0.701",
        "C 0.2 Mn 1 Mo 0.75, C 0.2 Mn 1 Mo 0.751",
        "C 0.2 Mn 1 Nb 0.06, C 0.2 Mn 1 Nb 0.061",
        "C 0.2 Mn 1 Ni 2.5, C 0.2 Mn 1 Ni 2.501",
        "C 0.2 Mn 1 Ti 0.12, C 0.2 Mn 1 Ti 0.121",
        "C 0.2 Mn 1 V 0.18, C 0.2 Mn 1 V 0.181",
        "C 0.2 Mn 1 B 0.005, C 0.2 Mn 1 B 0.0051"
    })
    void rangeOfCet(String inside, String outside) {
        assertTrue(CarbonEquivalents.of(Analyses.of(inside)).cet().insideRange());
        CarbonEquivalent found = CarbonEquivalents.of(Analyses.of(outside)).cet();
        assertFalse(found.insideRange());
        assertEquals(1, found.outside().size());
        assertTrue(found.outside().get(0).contains("is outside"));
    }
}
