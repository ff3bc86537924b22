package org.seamtally.gas;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One set-up under the duty, beside the first one.
 *
 * @param given the set-up
 * @param filled its start on a hose that has filled up: the highest peak there is
 * @param repeated its start as it repeats itself under the duty
 * @param perStart gas of one start by part, m³ at the reference state
 * @param volumePerYear m³ at the reference state
 * @param savedPerYear against the first, m³; below 0 where it takes more, empty where one of the two cannot reach its
 *     flow, as what does not shield is no saving
 * @param costPerYear of the gas, unrounded, where its price is known
 * @param costSavedPerYear against the first, unrounded
 * @param paybackStarts after how many starts the price has come back; empty where nothing is saved or a price is unknown
 * @param paybackShifts the same in shifts
 * @param verdict what to make of it
 */
public record ComparedSetUp(
        NamedSetUp given,
        StartTransient filled,
        StartTransient repeated,
        GasUse perStart,
        double volumePerYear,
        OptionalDouble savedPerYear,
        Optional<BigDecimal> costPerYear,
        Optional<BigDecimal> costSavedPerYear,
        OptionalDouble paybackStarts,
        OptionalDouble paybackShifts,
        Verdict verdict) {

    public String name() {
        return given.name();
    }

    public SteadyState steady() {
        return filled.steady();
    }
}
