package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.PreheatAdvice;
import org.seamtally.metal.PreheatMethod;

/** Whether preheat is due. */
@Schema(description = "Whether preheat is due. The qualified welding procedure stands over it.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PreheatAdviceAnswer(
        @Schema(
                description = "The advice.",
                required = true,
                enumeration = {"none", "preheat"})
        String verdict,

        @Schema(description = "Temperature advised; absent where none is.")
        Quantity advised,

        @Schema(
                description = "What the advice rests on.",
                required = true,
                enumeration = {"common-practice", "en-1011-2-method-b", "aws-d1-1-hydrogen-control"})
        String governing,

        @Schema(description = "Why, in plain words.", required = true)
        String why,

        @Schema(description = "The published methods, side by side.", required = true)
        List<Method> methods,

        @Schema(description = "The joint when it is preheated as advised; absent where no preheat is advised.")
        After after) {

    /** A published method. */
    @Schema(description = "What a published method asks for.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Method(
            @Schema(description = "Its name.", required = true, examples = "EN 1011-2:2001 method B")
            String name,

            @Schema(description = "Least preheat temperature; absent where it asks for none.")
            Quantity temperature,

            @Schema(description = "Whether all lies in the range the method is meant for.", required = true)
            boolean insideRange,

            @Schema(description = "What lies outside.", required = true)
            List<String> outside) {

        static Method of(PreheatMethod method, Shown shown) {
            return new Method(
                    method.name(),
                    method.leastTemperature().isPresent()
                            ? shown.temperature(method.leastTemperature().getAsDouble())
                            : null,
                    method.insideRange(),
                    shown.of(method.outside()));
        }
    }

    /** What the advised preheat does. */
    @Schema(description = "What the advised preheat does.")
    public record After(
            @Schema(description = "t8/5 from the advised temperature.", required = true)
            Quantity t85,

            @Schema(description = "Hardness beside the seam from the advised temperature.", required = true)
            HardnessAnswer hardness) {

        static After of(PreheatAdvice.After after, Shown shown) {
            return new After(shown.time(after.cooling().time()), HardnessAnswer.of(after.hardness()));
        }
    }

    static PreheatAdviceAnswer of(PreheatAdvice advice, Shown shown) {
        return new PreheatAdviceAnswer(
                advice.advised().isPresent() ? "preheat" : "none",
                advice.advised().isPresent()
                        ? shown.temperature(advice.advised().getAsDouble())
                        : null,
                Words.hyphened(advice.governing()),
                shown.of(advice.why()),
                advice.methods().stream()
                        .map(method -> Method.of(method, shown))
                        .toList(),
                advice.after().map(after -> After.of(after, shown)).orElse(null));
    }
}
