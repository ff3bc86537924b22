package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A result line of a job file. */
@Schema(description = "What came of one frame of a job file: its estimate, or its problem.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record JobAnswer(
        @Schema(
                description = "Line of the file that the frame starts in, from 1.",
                required = true,
                minimum = "1",
                examples = "2")
        long line,

        @Schema(description = "The estimate; absent where the frame was refused.")
        FrameEstimateAnswer estimate,

        @Schema(description = "Why the frame was refused; absent where it was estimated.")
        ProblemReport problem) {

    static JobLine done(long line, FrameEstimateAnswer estimate) {
        String name = estimate.name();
        TotalsAnswer sums = estimate.forQuantity();
        CostAnswer cost = estimate.cost();
        // of the answer itself, which is long, nothing is held
        return new JobLine(line, Json.bytes(new JobAnswer(line, estimate, null)), () -> totals(line, name, sums, cost));
    }

    static JobLine refused(long line, ProblemReport problem) {
        return new JobLine(line, Json.bytes(new JobAnswer(line, null, problem)), null);
    }

    private static JobTotals totals(long line, String name, TotalsAnswer sums, CostAnswer cost) {
        TreeMap<String, BigDecimal> amounts = new TreeMap<>();
        TreeMap<String, String> units = new TreeMap<>();
        AnswerQuantities.each("forQuantity", sums, (path, quantity) -> {
            // the decimal that the answer shows
            amounts.put(path, BigDecimal.valueOf(quantity.value()));
            units.put(path, quantity.unit());
        });
        TreeMap<String, BigDecimal> money = new TreeMap<>();
        if (cost == null) {
            return new JobTotals(1, amounts, units, money, List.of());
        }
        BigDecimal total = new BigDecimal(cost.total());
        money.put(cost.currency(), total);
        return new JobTotals(
                1, amounts, units, money, List.of(new JobTotals.DearFrame(line, name, cost.currency(), total)));
    }
}
