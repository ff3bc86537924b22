package org.seamtally.quantity;

import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MILLI;
import static org.seamtally.quantity.TradeUnits.*;
import static org.seamtally.quantity.UnitTable.unit;
import static tech.units.indriya.unit.Units.AMPERE;
import static tech.units.indriya.unit.Units.CELSIUS;
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
import static tech.units.indriya.unit.Units.RADIAN;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.SQUARE_METRE;
import static tech.units.indriya.unit.Units.VOLT;
import static tech.units.indriya.unit.Units.WATT;

import java.math.BigDecimal;
import java.util.List;
import javax.measure.Unit;
import si.uom.NonSI;
import systems.uom.common.USCustomary;
import tech.units.indriya.AbstractUnit;

/**
 * A kind of quantity: the units it takes, the SI unit it is read into, and the units it is shown in.
 *
 * <p>Which units are taken, and which sloppy spellings, is common practice of the trade, no source.
 */
public enum Dimension {
    /** Read into m. */
    LENGTH(
            "a length",
            "1.5 in",
            shown("mm", "in"),
            METRE,
            unit(MILLIMETRE, "mm"),
            unit(CENTIMETRE, "cm"),
            unit(METRE, "m"),
            unit(INCH, "in", "inch", "inches", "\"", "″", "in."),
            unit(FOOT, "ft", "foot", "feet", "'", "′", "ft.")),
    /** Read into m². */
    AREA(
            "an area",
            "12.5 mm2",
            shown("mm2", "in2"),
            SQUARE_METRE,
            unit(MILLIMETRE.pow(2), "mm2"),
            unit(CENTIMETRE.pow(2), "cm2"),
            unit(SQUARE_METRE, "m2"),
            unit(INCH.pow(2), "in2", "sq in"),
            unit(FOOT.pow(2), "ft2", "sq ft")),
    /** Read into m³. */
    VOLUME(
            "a volume",
            "0.25 in3",
            shown("mm3", "in3"),
            CUBIC_METRE,
            unit(MILLIMETRE.pow(3), "mm3"),
            unit(CENTIMETRE.pow(3), "cm3", "cc"),
            unit(LITRE, "L"),
            unit(CUBIC_METRE, "m3"),
            unit(INCH.pow(3), "in3", "cu in"),
            unit(CUBIC_FOOT, "ft3", "cu ft")),
    /** Read into rad. */
    ANGLE(
            "an angle",
            "45 deg",
            shown("deg", "deg"),
            RADIAN,
            unit(NonSI.DEGREE_ANGLE, "deg", "°", "degree", "degrees"),
            unit(RADIAN, "rad")),
    /** Read into kg. */
    MASS(
            "a mass",
            "2.5 lb",
            shown("g", "lb"),
            KILOGRAM,
            unit(GRAM, "g"),
            unit(KILOGRAM, "kg"),
            unit(USCustomary.POUND, "lb", "lbs"),
            unit(USCustomary.OUNCE, "oz")),
    /** Read into s. */
    TIME(
            "a time",
            "1.5 h",
            shown("s", "s"),
            SECOND,
            unit(MILLI(SECOND), "ms"),
            unit(SECOND, "s", "sec"),
            unit(MINUTE, "min"),
            unit(HOUR, "h", "hr", "hrs")),
    /** Read into m/s. */
    SPEED(
            "a speed",
            "6 in/min",
            shown("mm/s", "in/min"),
            METRE_PER_SECOND,
            unit(MILLIMETRE.divide(SECOND), "mm/s"),
            unit(MILLIMETRE.divide(MINUTE), "mm/min"),
            unit(CENTIMETRE.divide(MINUTE), "cm/min"),
            unit(METRE.divide(MINUTE), "m/min"),
            unit(METRE_PER_SECOND, "m/s"),
            unit(INCH.divide(MINUTE), "in/min", "ipm"),
            unit(INCH.divide(SECOND), "in/s"),
            unit(FOOT.divide(MINUTE), "ft/min", "fpm")),
    /** Gas flow at the reference state, whatever that is: conversion is plain geometry. Read into m³/s. */
    FLOW(
            "a gas flow",
            "15 ft3/h",
            shown("L/min", "ft3/h"),
            CUBIC_METRE_PER_SECOND,
            unit(LITRE_PER_MINUTE, "L/min", "lpm"),
            unit(LITRE.divide(HOUR), "L/h"),
            unit(CUBIC_METRE.divide(HOUR), "m3/h"),
            unit(CUBIC_METRE_PER_SECOND, "m3/s"),
            unit(CUBIC_FOOT.divide(HOUR), "ft3/h", "cfh", "scfh", "cf/h", "scf/h", "ft3/hr"),
            unit(CUBIC_FOOT.divide(MINUTE), "ft3/min", "cfm", "scfm")),
    /** Gas at the reference state. Read into m³. */
    GAS_VOLUME(
            "a gas volume",
            "80 ft3",
            shown("L", "ft3"),
            CUBIC_METRE,
            unit(LITRE, "L"),
            unit(CUBIC_METRE, "m3"),
            unit(CUBIC_FOOT, "ft3", "cf", "scf", "cu ft")),
    /** Above the atmosphere's pressure. Read into Pa. */
    GAUGE_PRESSURE(
            "a gauge pressure",
            "50 psi",
            shown("kPa", "psi"),
            PASCAL,
            unit(PSI, "psi", "psig"),
            unit(BAR, "bar", "barg"),
            unit(MILLIBAR, "mbar"),
            unit(PASCAL, "Pa"),
            unit(KILOPASCAL, "kPa"),
            unit(MEGAPASCAL, "MPa")),
    /** Above vacuum. Read into Pa. */
    PRESSURE(
            "an absolute pressure",
            "101.325 kPa",
            shown("kPa", "psi"),
            PASCAL,
            unit(PSI, "psi", "psia"),
            unit(BAR, "bar", "bara"),
            unit(MILLIBAR, "mbar"),
            unit(ATMOSPHERE, "atm"),
            unit(PASCAL, "Pa"),
            unit(KILOPASCAL, "kPa"),
            unit(MEGAPASCAL, "MPa")),
    /** Read into A. */
    CURRENT("a current", "90 A", shown("A", "A"), AMPERE, unit(AMPERE, "A", "amp", "amps")),
    /** Read into V. */
    VOLTAGE("a voltage", "11 V", shown("V", "V"), VOLT, unit(VOLT, "V", "volt", "volts")),
    /** Read into W. */
    POWER(
            "a power",
            "4 kW",
            shown("W", "W"),
            WATT,
            unit(WATT, "W"),
            unit(KILO(WATT), "kW"),
            unit(MEGA(WATT), "MW"),
            unit(BTU.divide(HOUR), "Btu/h", "Btu/hr")),
    /** Read into J. */
    ENERGY(
            "an energy",
            "250 kJ",
            shown("kJ", "Btu"),
            JOULE,
            unit(JOULE, "J"),
            unit(KILO(JOULE), "kJ"),
            unit(MEGA(JOULE), "MJ"),
            unit(BTU, "Btu"),
            unit(WATT_HOUR, "Wh"),
            unit(KILOWATT_HOUR, "kWh")),
    /** Electrical energy: an energy that is metered, and shown, in kilowatt-hours. Read into J. */
    ELECTRICITY(
            "an electrical energy",
            "1.2 kWh",
            shown("kWh", "kWh"),
            JOULE,
            unit(KILOWATT_HOUR, "kWh"),
            unit(WATT_HOUR, "Wh"),
            unit(JOULE, "J"),
            unit(KILO(JOULE), "kJ"),
            unit(MEGA(JOULE), "MJ"),
            unit(BTU, "Btu")),
    /** Read into J/m. */
    ENERGY_PER_LENGTH(
            "an energy per length",
            "0.5 kJ/mm",
            shown("kJ/mm", "kJ/in"),
            JOULE_PER_METRE,
            unit(KILO(JOULE).divide(MILLIMETRE), "kJ/mm"),
            unit(JOULE.divide(MILLIMETRE), "J/mm"),
            unit(KILO(JOULE).divide(CENTIMETRE), "kJ/cm"),
            unit(JOULE_PER_METRE, "J/m"),
            unit(KILO(JOULE).divide(INCH), "kJ/in"),
            unit(JOULE.divide(INCH), "J/in")),
    /** A temperature on its scale, never below absolute zero. Read into K. */
    TEMPERATURE(
            "a temperature",
            "300 degF",
            shown("degC", "degF"),
            KELVIN,
            unit(CELSIUS, "degC", "°C", "C", "deg C"),
            unit(USCustomary.FAHRENHEIT, "degF", "°F", "F", "deg F"),
            unit(KELVIN, "K")),
    /** How much warmer one thing is than another. Read into K. */
    TEMPERATURE_DIFFERENCE(
            "a temperature difference",
            "50 K",
            shown("K", "degF"),
            KELVIN,
            unit(KELVIN, "K", "degC", "°C", "C", "deg C"),
            unit(FAHRENHEIT_INTERVAL, "degF", "°F", "F", "deg F")),
    /** Read into K/s. */
    COOLING_RATE(
            "a cooling rate",
            "30 degC/s",
            shown("degC/s", "degF/s"),
            KELVIN_PER_SECOND,
            unit(KELVIN_PER_SECOND, "degC/s", "°C/s", "C/s", "K/s"),
            unit(KELVIN.divide(MINUTE), "degC/min", "°C/min", "C/min", "K/min"),
            unit(KELVIN.divide(HOUR), "degC/h", "°C/h", "C/h", "K/h"),
            unit(FAHRENHEIT_INTERVAL.divide(SECOND), "degF/s", "°F/s", "F/s")),
    /** Diffusible hydrogen, kept as mL per 100 g of weld metal, the trade's own unit. */
    HYDROGEN(
            "a diffusible hydrogen content",
            "5 mL/100g",
            shown("mL/100g", "mL/100g"),
            MILLILITRE_PER_100_GRAM,
            unit(MILLILITRE_PER_100_GRAM, "mL/100g", "mL/100 g")),
    /** Pieces. */
    COUNT(
            "a count",
            "12 each",
            shown("each", "each"),
            AbstractUnit.ONE,
            unit(AbstractUnit.ONE, "each", "ea", "pc", "pcs")),
    /** Read into Pa. */
    STRESS(
            "a stress",
            "70 ksi",
            shown("MPa", "ksi"),
            PASCAL,
            unit(MEGAPASCAL, "MPa", "N/mm2"),
            unit(GIGAPASCAL, "GPa"),
            unit(KILOPASCAL, "kPa"),
            unit(PASCAL, "Pa"),
            unit(KSI, "ksi"),
            unit(PSI, "psi")),
    /** Heat in a kilogram, such as a fuel's heating value. Read into J/kg. */
    HEAT_CONTENT(
            "a heat content",
            "46.3 MJ/kg",
            shown("MJ/kg", "Btu/lb"),
            JOULE_PER_KILOGRAM,
            unit(JOULE_PER_KILOGRAM, "J/kg"),
            unit(KILO(JOULE).divide(KILOGRAM), "kJ/kg"),
            unit(MEGA(JOULE).divide(KILOGRAM), "MJ/kg"),
            unit(BTU.divide(USCustomary.POUND), "Btu/lb")),
    /** Read into kg/m³. */
    DENSITY(
            "a density",
            "7.85 g/cm3",
            shown("kg/m3", "lb/ft3"),
            KILOGRAM_PER_CUBIC_METRE,
            unit(KILOGRAM_PER_CUBIC_METRE, "kg/m3", "g/L"),
            unit(GRAM.divide(CENTIMETRE.pow(3)), "g/cm3"),
            unit(USCustomary.POUND.divide(CUBIC_FOOT), "lb/ft3"),
            unit(USCustomary.POUND.divide(INCH.pow(3)), "lb/in3"));

    // no quantity of the trade takes half of this; it bounds the work a text can cause
    private static final int LONGEST = 64;

    private final Due due;
    private final Due rateDue;
    private final UnitTable table;
    private final Shown[] shown;

    Dimension(String word, String example, String[] shown, Unit<?> si, UnitTable.Entry... units) {
        this.table = new UnitTable(si, Milli.isMetBesideMega(si), List.of(units));
        this.due = new Due(word, table.symbols(), example);
        this.rateDue = due.priced();
        this.shown = new Shown[shown.length];
        for (int system = 0; system < shown.length; system++) {
            this.shown[system] = new Shown(shown[system], table.find(shown[system]));
        }
    }

    /**
     * Reads a number with its unit.
     *
     * @param text such as {@code 1-1/2 in}; blanks around and between do not matter
     * @return the SI value, finite; the nearest double to what was written, so that equal lengths are equal doubles
     * @throws QuantityException where the text is no quantity of this kind
     */
    public double read(String text) {
        String trimmed = require(text, due);
        Amount amount = Amount.read(trimmed, due);
        Scale scale = scale(trimmed, unitAfter(trimmed, amount.end()), due);
        BigDecimal si = scale.toSi(amount);
        if (this == TEMPERATURE && si.signum() < 0) {
            throw due.refuse(
                    QuantityException.NUMBER_OUT_OF_PHYSICS, trimmed, "\"" + trimmed + "\" lies below absolute zero");
        }
        double value = si.doubleValue();
        if (!Double.isFinite(value) || (value == 0 && si.signum() != 0)) {
            throw due.notFinite(trimmed);
        }
        return value;
    }

    /** The symbols of the units this takes, the shown ones among them. */
    public List<String> unitsTaken() {
        return due.taken();
    }

    /** A quantity of this kind as one would write it. */
    public String example() {
        return due.example();
    }

    /** What a quantity of this kind is called, with its article: {@code a length}. */
    public String words() {
        return due.words();
    }

    /**
     * An SI value as answers show it.
     *
     * @param si finite, in the SI unit of this kind
     * @return rounded to 9 significant digits
     * @throws IllegalArgumentException where the value, or what it becomes in the shown unit, is not finite
     */
    public Display show(double si, UnitSystem system) {
        Shown in = shown[system.ordinal()];
        return new Display(Digits.round(in.scale().fromSi(si), in.scale().isShifted()), in.symbol());
    }

    /** What a rate by this kind of quantity should have held. */
    Due rateDue() {
        return rateDue;
    }

    /** The scale of a unit that must be one of this kind's. */
    Scale scale(String text, String unit, Due wanted) {
        Scale scale = table.find(unit);
        if (scale == null) {
            throw refuseUnit(text, unit, wanted);
        }
        return scale;
    }

    /** The text without the blanks around it, refused where nothing can be read from it. */
    static String require(String text, Due wanted) {
        String trimmed = text == null ? "" : Blanks.strip(text);
        if (trimmed.isEmpty()) {
            throw wanted.refuse(QuantityException.EMPTY, "", "nothing is given");
        }
        if (trimmed.length() > LONGEST) {
            throw wanted.refuse(
                    QuantityException.TOO_LONG,
                    trimmed,
                    "\"" + QuantityException.shorten(trimmed) + "\" is longer than " + LONGEST + " characters");
        }
        if (trimmed.indexOf(',') >= 0) {
            throw wanted.malformed(trimmed, "a decimal point is taken, and no comma");
        }
        return trimmed;
    }

    private String unitAfter(String text, int end) {
        String unit = Blanks.strip(text.substring(end));
        // a digit, point, sign or bar here is a number that went wrong, not the start of a unit
        if (!unit.isEmpty() && "0123456789.+-/".indexOf(unit.charAt(0)) >= 0) {
            throw due.malformed(text, "the number ends before \"" + unit + "\"");
        }
        return unit;
    }

    private static QuantityException refuseUnit(String text, String unit, Due wanted) {
        if (unit.isEmpty()) {
            return wanted.refuse(QuantityException.UNIT_MISSING, text, "\"" + text + "\" has no unit");
        }
        for (Dimension other : values()) {
            if (other.table.find(unit) != null) {
                return wanted.refuse(
                        QuantityException.UNIT_OF_ANOTHER_KIND,
                        text,
                        "the unit \"" + unit + "\" in \"" + text + "\" is that of " + other.words());
            }
        }
        return wanted.refuse(
                QuantityException.UNIT_UNKNOWN,
                text,
                "the unit \"" + unit + "\" in \"" + text + "\" is not known here");
    }

    private static String[] shown(String si, String us) {
        return new String[] {si, us};
    }

    private record Shown(String symbol, Scale scale) {}

    /** An enum's constructor may not read its own statics: hence a holder. */
    private static final class Milli {
        // a capital M means millimetre or minute in a shop's hand, but megawatt, megajoule and megapascal on paper
        private static final List<Unit<?>> BESIDE_MEGA =
                List.of(WATT, JOULE, PASCAL, AMPERE, VOLT, JOULE_PER_METRE, JOULE_PER_KILOGRAM);

        static boolean isMetBesideMega(Unit<?> si) {
            return BESIDE_MEGA.contains(si);
        }
    }
}
