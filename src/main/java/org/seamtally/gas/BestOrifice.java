package org.seamtally.gas;

import java.util.OptionalDouble;

/** The orifice that damps the start of a hose best: the smallest peak whose setting still stands. */
public sealed interface BestOrifice {

    /** A thousandth of an inch, m: orifices are marked in them (common practice, no source). */
    double INCH_STEP = 0.0254e-3;

    /** m: small metric drills are sold in steps of it (common practice, no source). */
    double METRIC_STEP = 0.05e-3;

    /** The search starts from here, m: a thousandth of the smallest drill, where no setting of a welder's meter stands. */
    double SMALLEST = 0.1e-6;

    /**
     * The best there is.
     *
     * @param exact where the drift is just what is allowed
     * @param inch the next size up in thousandths of an inch
     * @param metric the next size up in twentieths of a millimetre
     */
    record Found(Size exact, Size inch, Size metric) implements BestOrifice {}

    /**
     * No orifice does, as without one the setting does not stand already, or with any as wide as the bore does not.
     *
     * @param drift without an orifice
     */
    record NoneStands(double drift) implements BestOrifice {}

    /** None is needed: with the meter at the machine a start throws nothing away. */
    record NotNeeded() implements BestOrifice {}

    /**
     * An orifice and what it does.
     *
     * @param diameter m
     * @param peakFlow m³/s at the reference state, the first instant's on a filled hose
     * @param drift of the setting
     */
    record Size(double diameter, double peakFlow, double drift) {

        private static Size of(SetUp setUp, double diameter) {
            SetUp with = setUp.withOrifice(OptionalDouble.of(diameter));
            return new Size(
                    diameter,
                    TorchEnd.of(with).at(with.supplyPressure()).value() / with.referenceDensity(),
                    SteadyState.of(with).drift());
        }
    }

    /**
     * The best orifice for a set-up, whatever orifice it has. A wider one never peaks lower and never drifts further, so
     * that the best is where the setting only just stands.
     */
    static BestOrifice of(SetUp setUp) {
        if (setUp.meterAt() == MeterPlace.MACHINE) {
            return new NotNeeded();
        }
        double bore = setUp.hose().insideDiameter();
        if (margin(setUp, bore) < 0) {
            return new NoneStands(
                    SteadyState.of(setUp.withOrifice(OptionalDouble.empty())).drift());
        }
        double exact = Bracketed.rootFromAbove(diameter -> margin(setUp, diameter), SMALLEST, bore);
        return new Found(
                Size.of(setUp, exact),
                Size.of(setUp, nextUp(exact, INCH_STEP)),
                Size.of(setUp, nextUp(exact, METRIC_STEP)));
    }

    /** By how much the setting stands with an orifice: 0 and above where it does, continuous in the diameter. */
    private static double margin(SetUp setUp, double diameter) {
        SetUp with = setUp.withOrifice(OptionalDouble.of(diameter));
        double reserve = 1 - new FlowPath(with).openMeterPressureFor(with.massFlow()) / with.supplyPressure();
        return Math.min(reserve, with.allowedDrift() + SteadyState.of(with).drift());
    }

    private static double nextUp(double diameter, double step) {
        return Math.ceil(diameter / step) * step;
    }
}
