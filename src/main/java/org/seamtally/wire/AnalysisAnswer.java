package org.seamtally.wire;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Composition;
import org.seamtally.metal.CarbonEquivalent;
import org.seamtally.metal.CarbonEquivalents;
import org.seamtally.metal.IdealDiameter;
import org.seamtally.metal.MartensiteStart;

/** An analysis and what follows from it alone. */
@Schema(description = "An analysis and what follows from it alone.")
public record AnalysisAnswer(
        @Schema(description = "Mass per cent by element.", required = true)
        Map<String, Double> composition,

        @Schema(description = "CE(IIW), CET and Pcm, each with the range it is meant for.", required = true)
        List<Equivalent> carbonEquivalents,

        @Schema(description = "Hardenability by ASTM A255.", required = true)
        Diameter idealDiameter,

        @Schema(description = "Where martensite starts to form on cooling.", required = true)
        Martensite martensiteStart) {

    /** A carbon equivalent. */
    @Schema(description = "A carbon equivalent.")
    public record Equivalent(
            @Schema(description = "As the standards write it.", required = true, examples = "CE(IIW)")
            String symbol,

            @Schema(description = "Mass per cent.", required = true)
            double value,

            @Schema(description = "The range it is meant for.", required = true)
            String meantFor,

            @Schema(description = "Whether the analysis lies in that range.", required = true)
            boolean insideRange,

            @Schema(description = "What lies outside.", required = true)
            List<String> outside) {

        static Equivalent of(CarbonEquivalent equivalent) {
            return new Equivalent(
                    equivalent.symbol(),
                    Shown.number(equivalent.value()),
                    equivalent.meantFor(),
                    equivalent.insideRange(),
                    equivalent.outside());
        }
    }

    /** An ideal critical diameter. */
    @Schema(description = "Ideal critical diameter: a comparison of hardenability, not a property of the joint.")
    public record Diameter(
            @Schema(description = "The diameter.", required = true)
            Quantity diameter,

            @Schema(description = "The factors it is the product of: carbon's in inches.", required = true)
            Map<String, Double> factors,

            @Schema(description = "Whether the analysis lies in the range of ASTM A255.", required = true)
            boolean insideRange,

            @Schema(description = "What lies outside.", required = true)
            List<String> outside) {

        static Diameter of(IdealDiameter ideal, Shown shown) {
            Map<String, Double> factors = new java.util.LinkedHashMap<>();
            ideal.factors().forEach(factor -> factors.put(factor.element().symbol(), Shown.number(factor.value())));
            return new Diameter(shown.length(ideal.diameter()), factors, ideal.insideRange(), ideal.outside());
        }
    }

    /** The martensite start temperature. */
    @Schema(description = "Martensite start temperature by two formulas.")
    public record Martensite(
            @Schema(description = "Andrews 1965, linear.", required = true)
            Quantity andrews,

            @Schema(description = "Van Bohemen 2012.", required = true)
            Quantity vanBohemen,

            @Schema(description = "What lies outside the range of Andrews' formula.", required = true)
            List<String> outside) {

        static Martensite of(MartensiteStart start, Shown shown) {
            return new Martensite(
                    shown.temperature(start.andrews()), shown.temperature(start.vanBohemen()), start.outside());
        }
    }

    static AnalysisAnswer of(
            Composition composition,
            CarbonEquivalents equivalents,
            IdealDiameter diameter,
            MartensiteStart start,
            Shown shown) {
        return new AnalysisAnswer(
                CatalogueAnswers.composition(composition),
                Stream.of(equivalents.iiw(), equivalents.cet(), equivalents.pcm())
                        .map(Equivalent::of)
                        .toList(),
                Diameter.of(diameter, shown),
                Martensite.of(start, shown));
    }

    /** An equivalent by its symbol. */
    public Optional<Equivalent> equivalent(String symbol) {
        return carbonEquivalents.stream()
                .filter(equivalent -> equivalent.symbol().equals(symbol))
                .findFirst();
    }
}
