package org.seamtally.quantity;

import static javax.measure.MetricPrefix.CENTI;
import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MILLI;
import static tech.units.indriya.unit.Units.CUBIC_METRE;
import static tech.units.indriya.unit.Units.GRAM;
import static tech.units.indriya.unit.Units.HOUR;
import static tech.units.indriya.unit.Units.JOULE;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.LITRE;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.MINUTE;
import static tech.units.indriya.unit.Units.PASCAL;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.WATT;

import javax.measure.Unit;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import systems.uom.common.Imperial;
import systems.uom.common.USCustomary;
import tech.units.indriya.function.RationalNumber;

/**
 * The units of the trade that need putting together. Inch, foot, pound, ounce and pound-force come from the library;
 * NIST SP 811 (2008), appendix B, from memory, gives the definitions of the others.
 */
final class TradeUnits {

    static final Unit<Length> INCH = USCustomary.INCH;
    static final Unit<Length> FOOT = USCustomary.FOOT;
    static final Unit<Length> MILLIMETRE = MILLI(METRE);
    static final Unit<Length> CENTIMETRE = CENTI(METRE);

    static final Unit<?> CUBIC_FOOT = FOOT.pow(3);
    static final Unit<?> MILLILITRE = MILLI(LITRE);

    static final Unit<?> METRE_PER_SECOND = METRE.divide(SECOND);
    static final Unit<?> CUBIC_METRE_PER_SECOND = CUBIC_METRE.divide(SECOND);
    static final Unit<?> LITRE_PER_MINUTE = LITRE.divide(MINUTE);

    // the bar is 100 kPa and the standard atmosphere 101 325 Pa by definition
    static final Unit<Pressure> BAR = PASCAL.multiply(100_000);
    static final Unit<Pressure> MILLIBAR = PASCAL.multiply(100);
    static final Unit<Pressure> ATMOSPHERE = PASCAL.multiply(101_325);
    static final Unit<?> PSI = Imperial.POUND_FORCE.divide(INCH.pow(2));
    static final Unit<?> KSI = PSI.multiply(1000);

    static final Unit<?> WATT_HOUR = WATT.multiply(HOUR);
    static final Unit<?> KILOWATT_HOUR = KILO(WATT).multiply(HOUR);

    /** The International Table one, 1055.05585262 J: the trade's several others differ from it by up to 0.1 %. */
    static final Unit<Energy> BTU = JOULE.multiply(RationalNumber.of(105_505_585_262L, 100_000_000L));

    static final Unit<?> FAHRENHEIT_INTERVAL = KELVIN.multiply(5).divide(9);

    static final Unit<?> JOULE_PER_METRE = JOULE.divide(METRE);
    static final Unit<?> JOULE_PER_KILOGRAM = JOULE.divide(KILOGRAM);
    static final Unit<?> KELVIN_PER_SECOND = KELVIN.divide(SECOND);
    static final Unit<?> KILOGRAM_PER_CUBIC_METRE = KILOGRAM.divide(CUBIC_METRE);

    /** Diffusible hydrogen as ISO 3690 states it: it stays as it is, in SI doubles too. */
    static final Unit<?> MILLILITRE_PER_100_GRAM = MILLILITRE.divide(GRAM.multiply(100));

    static final Unit<Pressure> KILOPASCAL = KILO(PASCAL);
    static final Unit<Pressure> MEGAPASCAL = MEGA(PASCAL);
    static final Unit<Pressure> GIGAPASCAL = GIGA(PASCAL);

    private TradeUnits() {}
}
