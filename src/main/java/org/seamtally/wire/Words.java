package org.seamtally.wire;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.joda.money.CurrencyUnit;
import org.seamtally.catalogue.Filler;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.Fuel;
import org.seamtally.catalogue.Fuels;
import org.seamtally.catalogue.Gases;
import org.seamtally.catalogue.ShieldingGas;
import org.seamtally.catalogue.Steel;
import org.seamtally.catalogue.Steels;
import org.seamtally.gas.MeterPlace;
import org.seamtally.metal.Restraint;
import org.seamtally.metal.SeamShape;
import org.seamtally.preheat.HeatSource;
import org.seamtally.seam.Face;

/** The lists of words that fields take. */
public enum Words {
    STEEL("a steel of the catalogue", () -> Steels.all().stream().map(Steel::name)),
    FILLER("a filler of the catalogue", () -> Fillers.all().stream().map(Filler::classification)),
    GAS("a shielding gas of the catalogue", () -> Gases.all().stream().map(ShieldingGas::name)),
    HEAT_SOURCE(
            "a fuel of the catalogue, or electricity",
            () -> Stream.concat(Fuels.all().stream().map(Fuel::name), Stream.of(HeatSource.ELECTRICITY))),
    METER_PLACE("where the meter sits", () -> Arrays.stream(MeterPlace.values()).map(Words::lower)),
    FACE_FORM("the form of a face", () -> Arrays.stream(Face.Form.values()).map(Face.Form::word)),
    RESTRAINT(
            "how far the parts are held",
            () -> Arrays.stream(Restraint.values()).map(Words::lower)),
    SEAM_SHAPE("a shape of seam", () -> Arrays.stream(SeamShape.values()).map(Words::hyphened)),
    CURRENCY(
            "an ISO 4217 code of a currency in use",
            () -> CurrencyUnit.registeredCurrencies().stream()
                    .filter(unit -> !unit.isPseudoCurrency())
                    .map(CurrencyUnit::getCode));

    private final String meaning;
    private final List<String> list;

    Words(String meaning, Supplier<Stream<String>> words) {
        this.meaning = meaning;
        this.list = words.get().toList();
    }

    /** What the words stand for. */
    public String meaning() {
        return meaning;
    }

    /** The words, in the list's order. */
    public List<String> list() {
        return list;
    }

    /** The list's own spelling of a word, whatever its case; null where the list has no such word. */
    String find(String word) {
        return list.stream().filter(own -> isSame(own, word)).findFirst().orElse(null);
    }

    /** Case is folded within ASCII alone: elsewhere one letter's small form may be another letter's. */
    private static boolean isSame(String own, String word) {
        return own.equals(word) || own.equalsIgnoreCase(word) && word.chars().allMatch(letter -> letter < 128);
    }

    /** The meter's place that a word means; null where there is none. */
    static MeterPlace meterPlace(Leaf leaf) {
        return leaf == null
                ? null
                : MeterPlace.valueOf(METER_PLACE.find(leaf.text()).toUpperCase(Locale.ROOT));
    }

    /** The currency that a code means; null where there is none. */
    static CurrencyUnit currency(Leaf leaf) {
        return leaf == null ? null : CurrencyUnit.of(CURRENCY.find(leaf.text()));
    }

    /** A constant's name with hyphens, as words of two parts are sent. */
    static String hyphened(Enum<?> constant) {
        return lower(constant).replace('_', '-');
    }

    static String lower(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }
}
