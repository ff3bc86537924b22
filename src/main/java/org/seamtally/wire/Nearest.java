package org.seamtally.wire;

import java.util.Collection;
import java.util.Locale;

/** The nearest of the words that are known, for whoever mistyped one. */
final class Nearest {

    private Nearest() {}

    /** The word with the fewest letters to change, at most a third of them; null where none is that near. */
    static String to(String given, Collection<String> known) {
        if (given.length() > 64) {
            return null;
        }
        String typed = given.toLowerCase(Locale.ROOT);
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String word : known) {
            int changes = changes(typed, word.toLowerCase(Locale.ROOT));
            if (changes < least) {
                least = changes;
                best = word;
            }
        }
        return best != null && least <= Math.max(1, Math.max(given.length(), best.length()) / 3) ? best : null;
    }

    /** Levenshtein's distance, row by row. */
    private static int changes(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int swap = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(swap, Math.min(above, row[j - 1]) + 1);
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
