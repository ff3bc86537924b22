package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.Fuels;
import org.seamtally.catalogue.Gases;
import org.seamtally.catalogue.Steels;
import org.seamtally.catalogue.Tubes;
import org.seamtally.quantity.UnitSystem;

/** What the catalogue's doors tell is what the catalogue holds; its figures are tried where it is. */
class CatalogueAnswersTest {

    private static <T> T named(String name, List<T> rows, Function<T, String> nameOf) {
        return rows.stream()
                .filter(row -> nameOf.apply(row).equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static void assertAllowed(Map<String, Double> typical, Map<String, CatalogueAnswers.Allowed> allowed) {
        assertTrue(allowed.size() > 3, allowed.toString());
        allowed.values().forEach(each -> assertTrue(each.min() != null || each.max() != null));
        typical.forEach((symbol, percent) -> {
            CatalogueAnswers.Allowed limits = allowed.get(symbol);
            if (limits != null && limits.min() != null) {
                assertTrue(percent >= limits.min(), symbol);
            }
            if (limits != null && limits.max() != null) {
                assertTrue(percent <= limits.max(), symbol);
            }
        });
    }

    /** AISI 4130: 0.28 to 0.33 % of carbon, at most 0.035 % of phosphorus (SAE J404, from memory). */
    @Test
    void aSteelHasItsLimitsAndItsStrength() {
        assertEquals(Steels.all().size(), CatalogueAnswers.steels(UnitSystem.SI).size());
        CatalogueAnswers.SteelRow steel =
                named("4130", CatalogueAnswers.steels(UnitSystem.SI), CatalogueAnswers.SteelRow::name);
        assertEquals(new CatalogueAnswers.Allowed(0.28, 0.33), steel.limits().get("C"));
        assertNull(steel.limits().get("P").min());
        assertEquals(0.035, steel.limits().get("P").max());
        CatalogueAnswers.steels(UnitSystem.US).forEach(row -> assertAllowed(row.typical(), row.limits()));
        assertEquals(
                Steels.find("4130").orElseThrow().leastTensileStrength().orElseThrow(),
                steel.leastTensileStrength().value() * 1e6,
                1);
        assertEquals("MPa", steel.leastTensileStrength().unit());
    }

    @Test
    void aFillerHasItsLimitsAndItsStrength() {
        List<CatalogueAnswers.FillerRow> fillers = CatalogueAnswers.fillers(UnitSystem.US);
        assertEquals(Fillers.all().size(), fillers.size());
        for (CatalogueAnswers.FillerRow row : fillers) {
            var held = Fillers.find(row.classification()).orElseThrow();
            assertAllowed(row.typical(), row.limits());
            assertEquals(held.title(), row.title());
            assertEquals(held.testCondition(), row.testCondition());
            assertEquals(held.standard(), row.standard());
            assertEquals(held.source(), row.source().text());
            assertEquals(held.leastTensileStrength().isPresent(), row.leastTensileStrength() != null);
            if (row.leastTensileStrength() != null) {
                assertEquals("ksi", row.leastTensileStrength().unit());
                // 1 ksi = 6.894757 MPa (NIST SP 811)
                double pascals = row.leastTensileStrength().value() * 6.894757e6;
                assertEquals(held.leastTensileStrength().orElseThrow(), pascals, 1e3);
            }
        }
    }

    /** A monatomic gas has 5/3. */
    @Test
    void aGasHasItsPartsAndItsProperties() {
        assertEquals(Gases.all().size(), CatalogueAnswers.gases().size());
        CatalogueAnswers.GasRow argon = named("argon", CatalogueAnswers.gases(), CatalogueAnswers.GasRow::name);
        assertEquals(Map.of("argon", 1.0), argon.parts());
        assertEquals(5.0 / 3, argon.heatCapacityRatio(), 1e-6);
        CatalogueAnswers.gases()
                .forEach(row -> assertEquals(
                        1,
                        row.parts().values().stream().mapToDouble(each -> each).sum(),
                        1e-9,
                        row.name()));
    }

    @Test
    void tubesAndFuelsAreAllTold() {
        List<CatalogueAnswers.TubeRow> tubes = CatalogueAnswers.tubes(UnitSystem.SI);
        assertEquals(Tubes.all().size(), tubes.size());
        for (CatalogueAnswers.TubeRow row : tubes) {
            var held = Tubes.find(row.designation()).orElseThrow();
            assertEquals(held.outsideDiameter(), row.outsideDiameter().value() / 1e3, 1e-9);
            assertEquals(held.wall(), row.wall().value() / 1e3, 1e-9);
        }
        assertEquals(Fuels.all().size(), CatalogueAnswers.fuels(UnitSystem.SI).size());
        CatalogueAnswers.fuels(UnitSystem.US)
                .forEach(row -> assertTrue(row.lowerHeatingValue().value() > 0, row.name()));
    }

    @Test
    void everyKindOfJointHasItsFields() {
        List<CatalogueAnswers.KindRow> kinds = CatalogueAnswers.jointKinds();
        assertEquals(JointKinds.classes().size(), kinds.size());
        assertEquals(
                kinds.size(),
                new HashSet<>(kinds.stream().map(CatalogueAnswers.KindRow::kind).toList()).size());
        kinds.forEach(kind -> assertTrue(kind.fields().size() > 2, kind.kind()));
    }
}
