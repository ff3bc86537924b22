package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.Steels;
import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.Rod;

/**
 * A steel or a filler as it was sent: a word of the catalogue, or a shop's own analysis. As with a {@link Leaf}, reading
 * never fails on one: what is wrong with it is for the constraints to say.
 *
 * @param name a single token; null where an analysis was sent
 * @param analysis by element, each a single token; null where a name was sent
 */
@JsonDeserialize(using = NameOrAnalysis.Reader.class)
@Schema(
        oneOf = {NameOrAnalysis.Analysis.class, String.class},
        description =
                "A name in the catalogue, or an analysis: mass per cent by the elements' symbols, carbon among them.")
public record NameOrAnalysis(
        @Schema(hidden = true) Leaf name,
        @Schema(hidden = true) Map<Element, Leaf> analysis) {

    /**
     * Mass per cent of each element at most: a decision of this project. The formulas are for carbon and low-alloy steel;
     * chromium, nickel and molybdenum end where the hardness formula of Yurioka et al. 1987 does, the others where no such
     * steel or filler is made. Together they stay far below 100 %.
     */
    private static final Map<Element, String> MOST = most();

    /** Steel without any carbon is not made, and the formulas start from carbon. */
    private static final String LEAST_CARBON = "0.001";

    /** Copies the analysis. */
    public NameOrAnalysis {
        analysis = analysis == null ? null : Collections.unmodifiableMap(new LinkedHashMap<>(analysis));
    }

    private static Map<Element, String> most() {
        EnumMap<Element, String> most = new EnumMap<>(Element.class);
        most.put(Element.C, "1.2");
        most.put(Element.MN, "3");
        most.put(Element.SI, "2");
        most.put(Element.P, "0.2");
        most.put(Element.S, "0.4");
        most.put(Element.CR, "10");
        most.put(Element.MO, "2");
        most.put(Element.NI, "10");
        most.put(Element.CU, "2");
        most.put(Element.V, "1");
        most.put(Element.NB, "0.5");
        most.put(Element.TI, "0.5");
        most.put(Element.ZR, "0.5");
        most.put(Element.AL, "1.5");
        most.put(Element.CO, "5");
        most.put(Element.N, "0.2");
        most.put(Element.B, "0.02");
        return most;
    }

    /** The least that is taken of an element, mass per cent, as it would be sent. */
    public static String least(Element element) {
        return element == Element.C ? LEAST_CARBON : "0";
    }

    /** The most that is taken of an element, mass per cent, as it would be sent. */
    public static String most(Element element) {
        return MOST.get(element);
    }

    /** The elements that are taken. */
    static List<String> symbols() {
        return Stream.of(Element.values()).map(Element::symbol).toList();
    }

    /** The steel, where all fits. */
    BaseMetal steel() {
        return analysis == null
                ? BaseMetal.of(Steels.find(name.text()).orElseThrow())
                : BaseMetal.ofAnalysis("own analysis", composition());
    }

    /**
     * The filler, where all fits.
     *
     * @param ownName what to call it where it is an analysis
     */
    Rod filler(String ownName) {
        return analysis == null
                ? Rod.of(Fillers.find(name.text()).orElseThrow())
                : Rod.ofAnalysis(ownName, composition());
    }

    private Composition composition() {
        EnumMap<Element, Double> shares = new EnumMap<>(Element.class);
        analysis.forEach((element, share) -> shares.put(element, Read.number(share)));
        return new Composition(shares);
    }

    /** How documents show an analysis. */
    @Schema(
            name = "Analysis",
            type = SchemaType.OBJECT,
            additionalProperties = Double.class,
            description = "Mass per cent by the elements' symbols, as bare numbers; iron is the rest and is not named.",
            examples = "{\"C\": 0.30, \"Mn\": 0.50, \"Si\": 0.25, \"Cr\": 0.95, \"Mo\": 0.20}")
    public interface Analysis {}

    /** Takes a single token or an object of them. */
    static final class Reader extends StdDeserializer<NameOrAnalysis> {

        private static final long serialVersionUID = 1;

        Reader() {
            super(NameOrAnalysis.class);
        }

        @Override
        public NameOrAnalysis deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (parser.currentToken().isScalarValue()) {
                return new NameOrAnalysis(context.readValue(parser, Leaf.class), null);
            }
            if (parser.currentToken() != JsonToken.START_OBJECT) {
                Misfits.of(context)
                        .add(Misfits.path(parser), Violation.Key.SHAPE, "a name or an analysis is due here", null);
                parser.skipChildren();
                return null;
            }
            Map<Element, Leaf> analysis = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String symbol = parser.currentName();
                parser.nextToken();
                readShare(symbol, analysis, parser, context);
            }
            return new NameOrAnalysis(null, analysis);
        }

        private static void readShare(
                String symbol, Map<Element, Leaf> analysis, JsonParser parser, DeserializationContext context)
                throws IOException {
            Element element = Stream.of(Element.values())
                    .filter(e -> e.symbol().equals(symbol))
                    .findFirst()
                    .orElse(null);
            if (element == null) {
                Misfits.of(context).addUnknown(parser, symbol, notAnElement(symbol), symbols());
                parser.skipChildren();
            } else if (parser.currentToken() != JsonToken.VALUE_NULL) {
                analysis.put(element, context.readValue(parser, Leaf.class));
            }
        }

        private static String notAnElement(String symbol) {
            if (symbol.equals("Fe")) {
                return "iron is the rest and is not named";
            }
            String nearest = Nearest.to(symbol, symbols());
            return "no such element here" + (nearest == null ? "" : "; the nearest is \"" + nearest + "\"");
        }
    }
}
