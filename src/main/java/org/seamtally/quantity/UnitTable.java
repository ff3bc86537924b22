package org.seamtally.quantity;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.measure.Unit;

/**
 * The units one dimension takes, by spelling. A spelling is looked up as it stands first, then without regard to case
 * where that leaves no doubt.
 */
final class UnitTable {

    /** A unit and its spellings; the first one is its symbol, which answers and messages use. */
    record Entry(Unit<?> unit, List<String> spellings) {}

    private final Map<String, Scale> bySymbol = new LinkedHashMap<>();
    private final Map<String, Scale> bySpelling = new HashMap<>();
    private final Map<String, String> byFoldedSpelling = new HashMap<>();
    private final boolean milliOrMega;
    private final List<String> symbols;

    /**
     * @param si the unit of the values that come out
     * @param milliOrMega whether both prefixes are met in this dimension, so that the case of an m must be kept
     */
    UnitTable(Unit<?> si, boolean milliOrMega, List<Entry> entries) {
        this.milliOrMega = milliOrMega;
        for (Entry entry : entries) {
            Scale scale = Scale.of(entry.unit(), si);
            bySymbol.put(entry.spellings().get(0), scale);
            for (String spelling : entry.spellings()) {
                add(spelling, scale);
                add(spelling.replace('2', '²').replace('3', '³'), scale);
                add(spelling.replace("2", "^2").replace("3", "^3"), scale);
            }
        }
        this.symbols = List.copyOf(bySymbol.keySet());
    }

    static Entry unit(Unit<?> unit, String... spellings) {
        return new Entry(unit, List.of(spellings));
    }

    List<String> symbols() {
        return symbols;
    }

    /** Null where no unit is spelled so. */
    Scale find(String spelling) {
        Scale exact = bySpelling.get(spelling);
        if (exact != null) {
            return exact;
        }
        String known = byFoldedSpelling.get(fold(spelling));
        return known == null || (milliOrMega && confusesPrefix(spelling, known)) ? null : bySpelling.get(known);
    }

    private void add(String spelling, Scale scale) {
        Scale other = bySpelling.put(spelling, scale);
        String folded = byFoldedSpelling.put(fold(spelling), spelling);
        if ((other != null && other != scale) || (folded != null && bySpelling.get(folded) != scale)) {
            throw new IllegalStateException("two units are spelled " + spelling);
        }
    }

    /** Megawatt and milliwatt differ by the case of one letter alone. */
    private static boolean confusesPrefix(String given, String known) {
        char first = given.charAt(0);
        return (first == 'm' || first == 'M') && first != known.charAt(0);
    }

    private static String fold(String spelling) {
        return spelling.toLowerCase(Locale.ROOT);
    }
}
