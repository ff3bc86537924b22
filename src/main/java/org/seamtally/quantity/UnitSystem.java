package org.seamtally.quantity;

/** The two sets of units in which answers are shown. */
public enum UnitSystem {
    /** Millimetres, grams, litres, kilopascals, degrees Celsius. */
    SI("si"),
    /** US customary: inches, pounds, cubic feet, pounds per square inch, degrees Fahrenheit. */
    US("us");

    private final String word;

    UnitSystem(String word) {
        this.word = word;
    }

    /** The word a request uses: {@code si} or {@code us}. */
    public String word() {
        return word;
    }

    /**
     * The system a request names.
     *
     * @param word {@code si} or {@code us}, in lower case
     * @throws IllegalArgumentException for any other word
     */
    public static UnitSystem of(String word) {
        for (UnitSystem system : values()) {
            if (system.word.equals(word)) {
                return system;
            }
        }
        throw new IllegalArgumentException("units are \"si\" or \"us\", not \"" + word + "\"");
    }
}
