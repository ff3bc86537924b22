package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

/**
 * Arc settings as given; null where left out.
 *
 * @param current A
 * @param voltage V
 * @param arcEfficiency share
 * @param meltingEfficiency share
 * @param travelSpeed m/s
 * @param maxTravelSpeed m/s
 * @param tackTime s
 * @param powerSourceEfficiency share
 */
public record GivenArc(
        Double current,
        Double voltage,
        Double arcEfficiency,
        Double meltingEfficiency,
        Double travelSpeed,
        Double maxTravelSpeed,
        Double tackTime,
        Double powerSourceEfficiency) {

    /** Nothing given. */
    public static final GivenArc NONE = new GivenArc(null, null, null, null, null, null, null, null);

    /** The current alone, A; null where left out. */
    static GivenArc ofCurrent(Double current) {
        return new GivenArc(current, null, null, null, null, null, null, null);
    }

    /** These, and what they leave out from another. */
    GivenArc over(GivenArc base) {
        return new GivenArc(
                first(current, base.current),
                first(voltage, base.voltage),
                first(arcEfficiency, base.arcEfficiency),
                first(meltingEfficiency, base.meltingEfficiency),
                first(travelSpeed, base.travelSpeed),
                first(maxTravelSpeed, base.maxTravelSpeed),
                first(tackTime, base.tackTime),
                first(powerSourceEfficiency, base.powerSourceEfficiency));
    }
}
