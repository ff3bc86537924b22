package org.seamtally.frame;

/**
 * How a shop works, as given for a whole request or for one joint of it.
 *
 * @param steel base steel and dilution
 * @param filler the rod
 * @param arc the arc
 * @param gas the gas and its way to the arc
 * @param preheat preheat
 */
public record Settings(GivenSteel steel, GivenFiller filler, GivenArc arc, GivenGas gas, GivenPreheat preheat) {

    /** Nothing given. */
    public static final Settings NONE =
            new Settings(GivenSteel.NONE, GivenFiller.NONE, GivenArc.NONE, GivenGas.NONE, GivenPreheat.NONE);

    /** These, and what they leave out from another. */
    Settings over(Settings base) {
        return new Settings(
                steel.over(base.steel),
                filler.over(base.filler),
                arc.over(base.arc),
                gas.over(base.gas),
                preheat.over(base.preheat));
    }

    static <T> T first(T own, T base) {
        return own != null ? own : base;
    }
}
