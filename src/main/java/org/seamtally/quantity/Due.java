package org.seamtally.quantity;

import java.util.List;

/**
 * What a text should have held, in the words of a refusal.
 *
 * @param words with an article: {@code a length}
 * @param taken the units, as they would be written
 * @param example one that is taken
 */
record Due(String words, List<String> taken, String example) {

    Due {
        taken = List.copyOf(taken);
    }

    /** Money for each unit of what is due here. */
    Due priced() {
        return new Due(
                "money for " + words,
                taken.stream().map(unit -> "/" + unit).toList(),
                "1.50/" + taken.get(taken.size() - 1));
    }

    QuantityException refuse(String key, String given, String complaint) {
        String message = complaint + "; " + words + " is due, in " + String.join(", ", taken) + ", such as " + example;
        return new QuantityException(key, given, taken, message);
    }

    QuantityException notFinite(String given) {
        return refuse(
                QuantityException.NUMBER_NOT_FINITE,
                given,
                "the number in \"" + given + "\" is not finite, or too large or too small to compute with");
    }

    QuantityException malformed(String given, String why) {
        return refuse(QuantityException.NUMBER_MALFORMED, given, "\"" + given + "\" holds no number: " + why);
    }
}
