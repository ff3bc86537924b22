package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.Fuels;
import org.seamtally.catalogue.Gases;
import org.seamtally.catalogue.Limits;
import org.seamtally.catalogue.Steels;
import org.seamtally.catalogue.Tubes;
import org.seamtally.gas.GasProperties;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.UnitSystem;

/** Reference data as it is answered. Every row carries its source and how well that source is known. */
public final class CatalogueAnswers {

    private CatalogueAnswers() {}

    /** Where a row's figures stand. */
    @Schema(description = "Where a row's figures stand.")
    public record Source(
            @Schema(description = "The source.", required = true)
            String text,

            @Schema(
                    description = "How well it is known: read, from memory, computed, or common practice, no source.",
                    required = true,
                    examples = "from memory")
            String status) {}

    /** What an element may be. */
    @Schema(description = "Mass per cent that a standard allows of an element.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Allowed(
            @Schema(description = "The least, %; absent where there is none.", minimum = "0", maximum = "100")
            Double min,

            @Schema(description = "The most, %; absent where there is none.", minimum = "0", maximum = "100")
            Double max) {

        static Map<String, Allowed> of(Map<Element, Limits> limits) {
            Map<String, Allowed> all = new LinkedHashMap<>();
            for (Element element : Element.values()) {
                Limits limit = limits.get(element);
                if (limit != null) {
                    all.put(element.symbol(), new Allowed(maybe(limit.least()), maybe(limit.greatest())));
                }
            }
            return all;
        }
    }

    /** A base steel. */
    @Schema(description = "A base steel in one condition.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record SteelRow(
            @Schema(description = "The word a request uses.", required = true, examples = "4130")
            String name,

            @Schema(description = "What it is.", required = true)
            String title,

            @Schema(description = "Condition of delivery.", required = true)
            String heatTreatment,

            @Schema(description = "What its standard allows, mass per cent by element.", required = true)
            Map<String, Allowed> limits,

            @Schema(description = "A typical analysis, mass per cent by element.", required = true)
            Map<String, Double> typical,

            @Schema(description = "Least tensile strength.") Quantity leastTensileStrength,
            @Schema(description = "Least yield strength.") Quantity leastYieldStrength,

            @Schema(description = "Where it is specified.", required = true)
            String standard,

            @Schema(description = "Where the figures stand.", required = true)
            Source source) {}

    /** A filler rod. */
    @Schema(description = "A filler rod.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record FillerRow(
            @Schema(description = "Classification: the word a request uses.", required = true, examples = "ER70S-2")
            String classification,

            @Schema(description = "What it is.", required = true)
            String title,

            @Schema(description = "What its standard allows, mass per cent by element.", required = true)
            Map<String, Allowed> limits,

            @Schema(description = "A typical analysis, mass per cent by element.", required = true)
            Map<String, Double> typical,

            @Schema(description = "Least tensile strength of the undiluted weld metal.")
            Quantity leastTensileStrength,

            @Schema(description = "Condition in which that is tested.", required = true)
            String testCondition,

            @Schema(description = "Where it is specified.", required = true)
            String standard,

            @Schema(description = "Where the figures stand.", required = true)
            Source source) {}

    /** A shielding gas. */
    @Schema(description = "A shielding gas.")
    public record GasRow(
            @Schema(description = "The word a request uses.", required = true, examples = "argon")
            String name,

            @Schema(description = "Designation by ISO 14175.", required = true, examples = "I1")
            String designation,

            @Schema(description = "Mole fraction by gas.", required = true)
            Map<String, Double> parts,

            @Schema(description = "Ratio of heat capacities.", required = true, minimum = "1")
            double heatCapacityRatio,

            @Schema(description = "Specific gas constant, J/(kg K).", required = true, minimum = "0")
            double gasConstant,

            @Schema(description = "Dynamic viscosity at 20 °C, µPa s.", required = true, minimum = "0")
            double viscosity,

            @Schema(description = "Where the figures stand.", required = true)
            Source source) {}

    /** A fuel. */
    @Schema(description = "A fuel for preheating.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record FuelRow(
            @Schema(description = "The word a request uses.", required = true, examples = "propane")
            String name,

            @Schema(description = "Lower heating value.", required = true)
            Quantity lowerHeatingValue,

            @Schema(description = "Density as a gas at 15 °C and 1 atm.")
            Quantity gasDensity,

            @Schema(description = "Where the figures stand.", required = true)
            Source source) {}

    /** A tube size. */
    @Schema(description = "A round tube as it is sold.")
    public record TubeRow(
            @Schema(description = "As it is asked for.", required = true, examples = "1-1/2 x 0.095 in")
            String designation,

            @Schema(description = "Outside diameter.", required = true)
            Quantity outsideDiameter,

            @Schema(description = "Wall.", required = true) Quantity wall,

            @Schema(description = "Where the size stands.", required = true)
            Source source) {}

    /** A kind of joint. */
    @Schema(description = "A kind of joint with its fields and their ranges.")
    public record KindRow(
            @Schema(description = "The word a request uses.", required = true, examples = "tube-to-tube")
            String kind,

            @Schema(description = "What it is.", required = true)
            String description,

            @Schema(description = "Its fields.", required = true)
            List<FieldRule> fields) {}

    /** All base steels. */
    public static List<SteelRow> steels(UnitSystem units) {
        Shown shown = new Shown(units);
        return Steels.all().stream()
                .map(s -> new SteelRow(
                        s.name(),
                        s.title(),
                        Words.lower(s.heatTreatment()).replace('_', ' '),
                        Allowed.of(s.limits()),
                        composition(s.typical()),
                        shown.of(Dimension.STRESS, s.leastTensileStrength()),
                        shown.of(Dimension.STRESS, s.leastYieldStrength()),
                        s.standard(),
                        new Source(s.source(), s.status().text())))
                .toList();
    }

    /** All fillers. */
    public static List<FillerRow> fillers(UnitSystem units) {
        Shown shown = new Shown(units);
        return Fillers.all().stream()
                .map(f -> new FillerRow(
                        f.classification(),
                        f.title(),
                        Allowed.of(f.limits()),
                        composition(f.typical()),
                        shown.of(Dimension.STRESS, f.leastTensileStrength()),
                        f.testCondition(),
                        f.standard(),
                        new Source(f.source(), f.status().text())))
                .toList();
    }

    /** All shielding gases. */
    public static List<GasRow> gases() {
        return Gases.all().stream()
                .map(g -> {
                    Map<String, Double> parts = new LinkedHashMap<>();
                    g.parts().forEach(part -> parts.put(part.gas().name(), part.moleFraction()));
                    GasProperties properties = GasProperties.of(g);
                    return new GasRow(
                            g.name(),
                            Gases.designation(g),
                            parts,
                            Shown.number(properties.heatCapacityRatio()),
                            Shown.number(properties.gasConstant()),
                            Shown.number(properties.viscosity() * 1e6),
                            new Source(g.source(), g.status().text()));
                })
                .toList();
    }

    /** All fuels. */
    public static List<FuelRow> fuels(UnitSystem units) {
        Shown shown = new Shown(units);
        return Fuels.all().stream()
                .map(f -> new FuelRow(
                        f.name(),
                        shown.of(Dimension.HEAT_CONTENT, f.lowerHeatingValue()),
                        shown.of(Dimension.DENSITY, f.gasDensity()),
                        new Source(f.source(), f.status().text())))
                .toList();
    }

    /** All tube sizes. */
    public static List<TubeRow> tubes(UnitSystem units) {
        Shown shown = new Shown(units);
        return Tubes.all().stream()
                .map(t -> new TubeRow(
                        t.designation(),
                        shown.length(t.outsideDiameter()),
                        shown.length(t.wall()),
                        new Source(t.source(), t.status().text())))
                .toList();
    }

    /** All kinds of joint, read off the requests that take them. */
    public static List<KindRow> jointKinds() {
        return JointKinds.classes().stream()
                .map(type -> new KindRow(
                        JointKinds.nameOf(type),
                        type.getAnnotation(Schema.class).description(),
                        FieldRule.deep(type)))
                .toList();
    }

    /** Mass per cent by symbol, what is not named left out. */
    static Map<String, Double> composition(Composition composition) {
        Map<String, Double> all = new LinkedHashMap<>();
        for (Element element : Element.values()) {
            if (composition.of(element) > 0) {
                all.put(element.symbol(), Shown.number(composition.of(element)));
            }
        }
        return all;
    }

    private static Double maybe(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }
}
