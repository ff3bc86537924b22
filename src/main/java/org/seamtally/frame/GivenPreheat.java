package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

import org.seamtally.preheat.HeatSource;

/**
 * Preheat settings as given; null where left out.
 *
 * @param temperature K
 * @param ambient K
 * @param zone m
 * @param hold s
 * @param source flame or electricity
 * @param heatingEfficiency share
 * @param sourcePower W
 */
public record GivenPreheat(
        Double temperature,
        Double ambient,
        Double zone,
        Double hold,
        HeatSource source,
        Double heatingEfficiency,
        Double sourcePower) {

    /** Nothing given. */
    public static final GivenPreheat NONE = new GivenPreheat(null, null, null, null, null, null, null);

    /** The same, to another temperature, K. */
    GivenPreheat to(double other) {
        return new GivenPreheat(other, ambient, zone, hold, source, heatingEfficiency, sourcePower);
    }

    /** These, and what they leave out from another. */
    GivenPreheat over(GivenPreheat base) {
        return new GivenPreheat(
                first(temperature, base.temperature),
                first(ambient, base.ambient),
                first(zone, base.zone),
                first(hold, base.hold),
                first(source, base.source),
                first(heatingEfficiency, base.heatingEfficiency),
                first(sourcePower, base.sourcePower));
    }
}
