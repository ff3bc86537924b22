package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What frames of a batch add up to. Amounts are the decimals of the frames' own answers, added exactly: the sum is the same
 * in whatever order and in whatever chunks.
 *
 * @param frames that were estimated
 * @param amounts by the path of the answer's quantity, such as {@code forQuantity.filler.consumed}; in the unit of the answers
 * @param units of the amounts, by the same paths
 * @param money by currency
 * @param dearest frames with the highest price, dearest first, at most {@link #DEAREST} a currency
 */
public record JobTotals(
        long frames,
        TreeMap<String, BigDecimal> amounts,
        TreeMap<String, String> units,
        TreeMap<String, BigDecimal> money,
        List<DearFrame> dearest) {

    /** Dearest frames told of: a screen of them. */
    public static final int DEAREST = 10;

    /**
     * A frame by its price.
     *
     * @param line it starts in
     * @param name may be null
     */
    public record DearFrame(long line, String name, String currency, BigDecimal total) {}

    /** Of no frame. */
    public static JobTotals none() {
        return new JobTotals(0, new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), List.of());
    }

    /**
     * Totals that were kept.
     *
     * @throws IllegalArgumentException where {@link #json} did not write them
     */
    public static JobTotals read(byte[] json) {
        try {
            return Json.mapper().readValue(json, JobTotals.class);
        } catch (IOException e) {
            throw new IllegalArgumentException("these are no totals", e);
        }
    }

    /** To be kept, every decimal with all its digits. */
    public byte[] json() {
        try {
            return Json.mapper().writeValueAsBytes(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("totals can always be written", e);
        }
    }

    /** Both together. */
    public JobTotals plus(JobTotals other) {
        TreeMap<String, String> bothUnits = new TreeMap<>(units);
        bothUnits.putAll(other.units);
        return new JobTotals(
                frames + other.frames,
                sum(amounts, other.amounts),
                bothUnits,
                sum(money, other.money),
                DearFrames.first(dearest, other.dearest));
    }

    private static TreeMap<String, BigDecimal> sum(Map<String, BigDecimal> some, Map<String, BigDecimal> more) {
        TreeMap<String, BigDecimal> all = new TreeMap<>(some);
        more.forEach((key, value) -> all.merge(key, value, BigDecimal::add));
        return all;
    }
}
