package org.seamtally.gas;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What to make of a set-up, and why: as data, and in plain words.
 *
 * @param standing in one word
 * @param reasons the deciding one first
 */
public record Verdict(Standing standing, List<Reason> reasons) {

    public Verdict {
        reasons = List.copyOf(reasons);
    }

    /** In one word. */
    public enum Standing {
        /** The first: what the others are measured against. */
        REFERENCE("is the reference"),
        /** Takes less gas, and the setting stands. */
        SAVES("saves gas"),
        /** Takes no less gas. */
        SAVES_NOTHING("takes no less gas"),
        /** The setting stands, but the first cannot reach its flow: what is saved against that has no meaning. */
        REACHES("reaches the flow, as the reference does not"),
        /** The flow drifts too far from the meter's setting: to be set anew, or to be left alone. */
        DOES_NOT_STAND("drifts from its setting"),
        /** The flow cannot be reached. */
        NOT_REACHABLE("cannot reach its flow");

        private final String words;

        Standing(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One reason.
     *
     * @param key which
     * @param numbers by name: shares as fractions of 1, all else in SI
     */
    public record Reason(Key key, Map<String, Double> numbers) {

        public Reason {
            numbers = java.util.Collections.unmodifiableMap(new TreeMap<>(numbers));
        }

        /** The reason as a clause, its numbers in it. */
        public String words() {
            Object[] values = java.util.Arrays.stream(key.names)
                    .map(name -> numbers.get(name) * key.factor)
                    .map(value -> key.inRoundFigures ? (Object) twoDigits(value) : value)
                    .toArray();
            return String.format(Locale.ROOT, key.pattern, values).replaceAll("[+-](0\\.0+\\b)", "$1");
        }

        private static String twoDigits(double value) {
            return BigDecimal.valueOf(value)
                    .round(new MathContext(2, RoundingMode.HALF_UP))
                    .stripTrailingZeros()
                    .toPlainString();
        }
    }

    /** Reasons there are, each with the numbers that its words take. */
    public enum Key {
        FLOW_NOT_REACHED("even the open meter passes only %.0f %% of the set flow", 100, "share"),
        SETTING_DRIFTS(
                "left alone, the flow drifts by %+.1f %%, more than the %.1f %% allowed", 100, "drift", "allowed"),
        SETTING_STANDS("left alone, the flow drifts by %+.1f %%, within the %.1f %% allowed", 100, "drift", "allowed"),
        GAS_SAVED("takes %.1f %% less of all gas", 100, "share"),
        GAS_ADDED("takes %.1f %% more of all gas", 100, "share"),
        SURGE_SAVED("throws away %.0f %% less at a start", 100, "share"),
        STORED_SAVED("its hose stores %.0f %% less", 100, "share"),
        TURBULENT_START(
                "at the first instant Re at the nozzle is %.0f, above %.0f: air may be drawn in", 1, "re", "limit"),
        LAMINAR_START("at the first instant Re at the nozzle is %.0f, below %.0f", 1, "re", "limit"),
        GAS_NEVER_SHUTS("post-flow and pre-flow fill the time between two arcs: the gas never shuts", 1),
        /** A forecast: its second digit is as far as one can see. */
        PAYS_BACK("is paid back after about %s starts, in about %s shifts", true, 1, "starts", "shifts");

        private final String pattern;
        private final boolean inRoundFigures;
        private final double factor;
        private final String[] names;

        Key(String pattern, double factor, String... names) {
            this(pattern, false, factor, names);
        }

        Key(String pattern, boolean inRoundFigures, double factor, String... names) {
            this.pattern = pattern;
            this.inRoundFigures = inRoundFigures;
            this.factor = factor;
            this.names = names;
        }
    }

    /** The verdict as a sentence. */
    public String words() {
        return standing.words() + ": " + reasons.stream().map(Reason::words).collect(Collectors.joining("; "));
    }
}
