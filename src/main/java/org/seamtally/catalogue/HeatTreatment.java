package org.seamtally.catalogue;

/** The condition in which a steel is delivered, as far as welding asks for it. */
public enum HeatTreatment {
    NORMALIZED("normalized"),
    QUENCHED_AND_TEMPERED("quenched and tempered"),
    /** Cold drawn to size, perhaps stress relieved, not normalized after it. */
    AS_DRAWN("as drawn"),
    HOT_FINISHED("hot finished"),
    /** Rolled, and formed or welded to a tube, without a heat treatment of its own. */
    AS_ROLLED("as rolled");

    private final String text;

    HeatTreatment(String text) {
        this.text = text;
    }

    /** The words that a table's column holds and that users read. */
    public String text() {
        return text;
    }

    static HeatTreatment of(String text) {
        for (HeatTreatment treatment : values()) {
            if (treatment.text.equals(text)) {
                return treatment;
            }
        }
        throw new IllegalArgumentException("no heat treatment is called \"" + text + "\"");
    }
}
