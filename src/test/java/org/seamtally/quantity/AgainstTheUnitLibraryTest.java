package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.JOULE;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.SECOND;

import java.math.BigDecimal;
import java.util.stream.Stream;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import systems.uom.common.Imperial;
import systems.uom.common.USCustomary;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** The other side is the unit library's own quantity conversion, with units put together here from its base ones. */
class AgainstTheUnitLibraryTest {

    static Stream<Arguments> cases() {
        return SweepOfDecimals.of(40)
                .flatMap(number -> Stream.of(
                        Arguments.of(Dimension.LENGTH, "in", USCustomary.INCH, Units.METRE, number),
                        Arguments.of(Dimension.LENGTH, "ft", USCustomary.INCH.multiply(12), Units.METRE, number),
                        Arguments.of(Dimension.MASS, "lb", Imperial.POUND, KILOGRAM, number),
                        Arguments.of(Dimension.MASS, "oz", Imperial.POUND.divide(16), KILOGRAM, number),
                        Arguments.of(
                                Dimension.FLOW,
                                "ft3/h",
                                USCustomary.CUBIC_INCH.multiply(1728).divide(SECOND.multiply(3600)),
                                Units.CUBIC_METRE.divide(SECOND),
                                number),
                        Arguments.of(
                                Dimension.FLOW,
                                "L/min",
                                MetricPrefix.DECI(Units.METRE).pow(3).divide(MINUTE),
                                Units.CUBIC_METRE.divide(SECOND),
                                number),
                        Arguments.of(
                                Dimension.SPEED,
                                "in/min",
                                Imperial.INCH.divide(MINUTE),
                                Units.METRE.divide(SECOND),
                                number),
                        Arguments.of(
                                Dimension.GAUGE_PRESSURE,
                                "psi",
                                Imperial.POUND
                                        .multiply(Imperial.STANDARD_GRAVITY)
                                        .divide(USCustomary.INCH.multiply(USCustomary.INCH)),
                                Units.PASCAL,
                                number),
                        Arguments.of(
                                Dimension.ENERGY_PER_LENGTH,
                                "kJ/in",
                                JOULE.multiply(1000).divide(USCustomary.INCH),
                                JOULE.divide(Units.METRE),
                                number),
                        Arguments.of(Dimension.TEMPERATURE, "degC", CELSIUS, KELVIN, number),
                        Arguments.of(Dimension.TEMPERATURE, "degF", USCustomary.FAHRENHEIT, KELVIN, number),
                        Arguments.of(
                                Dimension.ANGLE, "deg", USCustomary.REVOLUTION.divide(360), Units.RADIAN, number)));
    }

    @ParameterizedTest(name = "{4} {1}, seed " + SweepOfDecimals.SEED)
    @MethodSource("cases")
    void readsWhatTheLibraryConverts(Dimension dimension, String unit, Unit<?> from, Unit<?> to, BigDecimal number) {
        double si = converted(from, to, number.doubleValue());
        assertEquals(si, dimension.read(number.toPlainString() + unit), Math.abs(si) * 1e-15 * 4);
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static double converted(Unit<?> from, Unit<?> to, double number) {
        return Quantities.getQuantity(number, (Unit) from)
                .to((Unit) to)
                .getValue()
                .doubleValue();
    }
}
