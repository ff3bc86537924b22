package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import java.util.Arrays;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.OtherWork;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.QuantityException;
import org.seamtally.quantity.Rate;

/** A line of the shop's own. */
@Schema(description = "A line of the shop's own, for the whole order: a quantity at a rate, or an amount.")
public record OtherWorkRequest(
        @NotNull @Text(max = 100) @Schema(description = "What the customer reads.", examples = "Cut and cope tube ends")
        Leaf item,

        @Schema(
                description = "Time, length, area, mass or count (\"12 each\"), of the kind that the rate prices.",
                examples = "6 h")
        Leaf quantity,

        @Price({Dimension.TIME, Dimension.LENGTH, Dimension.AREA, Dimension.MASS, Dimension.COUNT})
        @Schema(description = "Money by a unit.", examples = "55.00/h")
        Leaf rate,

        @Sum @Schema(description = "A fixed sum, instead of quantity and rate.", examples = "120.00")
        Leaf amount)
        implements CrossChecked {

    static final Dimension[] PRICED = {Dimension.TIME, Dimension.LENGTH, Dimension.AREA, Dimension.MASS, Dimension.COUNT
    };

    OtherWork given() {
        if (amount != null) {
            return new OtherWork(item.text(), Optional.empty(), Optional.of(Read.decimal(amount)));
        }
        Rate read = Read.rate(rate, PRICED);
        return new OtherWork(
                item.text(),
                Optional.of(new OtherWork.Priced(Read.quantity(quantity, read.dimension()), read)),
                Optional.empty());
    }

    @Override
    public void check(Contradictions contradictions) {
        if (amount != null && (quantity != null || rate != null)) {
            contradictions.add(
                    "amount", Violation.Key.CONTRADICTION, "either an amount, or a quantity and a rate", amount);
            return;
        }
        if (amount != null) {
            return;
        }
        if (rate == null) {
            contradictions.add("rate", Violation.Key.MISSING, "a rate, or an amount instead", null);
        }
        if (quantity == null) {
            contradictions.add("quantity", Violation.Key.MISSING, "a quantity, or an amount instead", null);
        } else if (rate != null) {
            checkQuantity(contradictions);
        }
    }

    private void checkQuantity(Contradictions contradictions) {
        Optional<Dimension> priced = Arrays.stream(PRICED).filter(this::prices).findFirst();
        if (priced.isEmpty()) {
            return;
        }
        try {
            double value = priced.get().read(quantity.text());
            // a million hours, metres, kilograms or pieces in an order is a slip of the pen
            if (quantity.kind() != Leaf.Kind.TEXT || value < 0 || value > 3.6e9) {
                contradictions.add(
                        "quantity", Violation.Key.OUT_OF_RANGE, "not negative, at most a million hours", quantity);
            }
        } catch (QuantityException e) {
            contradictions.add("quantity", e.key(), e.getMessage(), quantity);
        }
    }

    private boolean prices(Dimension dimension) {
        try {
            Rate.read(rate.text(), dimension);
            return true;
        } catch (QuantityException e) {
            return false;
        }
    }
}
