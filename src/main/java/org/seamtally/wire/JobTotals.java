package org.seamtally.wire;

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
