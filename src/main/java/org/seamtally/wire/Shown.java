package org.seamtally.wire;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.frame.Assumption;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.UnitSystem;

/** Shows SI figures in the units that were asked for. */
record Shown(UnitSystem units) {

    Quantity of(Dimension dimension, double si) {
        return Quantity.of(dimension.show(si, units));
    }

    Quantity of(Dimension dimension, OptionalDouble si) {
        return si.isPresent() ? of(dimension, si.getAsDouble()) : null;
    }

    Quantity length(double si) {
        return of(Dimension.LENGTH, si);
    }

    Quantity volume(double si) {
        return of(Dimension.VOLUME, si);
    }

    Quantity mass(double si) {
        return of(Dimension.MASS, si);
    }

    Quantity time(double si) {
        return of(Dimension.TIME, si);
    }

    Quantity gas(double si) {
        return of(Dimension.GAS_VOLUME, si);
    }

    Quantity flow(double si) {
        return of(Dimension.FLOW, si);
    }

    Quantity energy(double si) {
        return of(Dimension.ENERGY, si);
    }

    Quantity temperature(double si) {
        return of(Dimension.TEMPERATURE, si);
    }

    Quantity angle(double si) {
        return of(Dimension.ANGLE, si);
    }

    /** Pressure above the atmosphere from an absolute one. */
    Quantity gauge(double absolute) {
        return of(Dimension.GAUGE_PRESSURE, absolute - org.seamtally.gas.ReferenceState.PRESSURE);
    }

    /** Nine significant digits, as for a quantity. */
    static double number(double value) {
        return Dimension.COUNT.show(value, UnitSystem.SI).value();
    }

    String of(Phrase phrase) {
        return phrase.in(units);
    }

    List<String> of(List<Phrase> phrases) {
        return phrases.stream().map(this::of).toList();
    }

    /** A value that was assumed, as it would be sent. */
    String of(Assumption.Value value) {
        if (value instanceof Assumption.Words words) {
            return words.text();
        }
        Assumption.Measured measured = (Assumption.Measured) value;
        Quantity quantity = of(measured.dimension(), measured.value());
        // an assumption is no measurement, and nobody assumes 21.111 °C; 1/16 in is 1.5875 mm
        BigDecimal whole = BigDecimal.valueOf(quantity.value());
        BigDecimal rounded = measured.dimension() == Dimension.TEMPERATURE
                ? whole.setScale(1, RoundingMode.HALF_EVEN)
                : whole.round(new MathContext(measured.dimension() == Dimension.LENGTH ? 5 : 4));
        return rounded.stripTrailingZeros().toPlainString() + " " + quantity.unit();
    }
}
