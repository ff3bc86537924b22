package org.seamtally.catalogue;

/** How well a row's figures are known. */
public enum Status {
    /** The figures were read in the source that the row names. */
    READ("read"),
    /** The source is named from memory; the figures were not read there again. */
    FROM_MEMORY("from memory"),
    /** Common practice of the trade, no source. */
    COMMON_PRACTICE("common practice, no source"),
    /** Computed from figures that the row's source names. */
    COMPUTED("computed");

    private final String text;

    Status(String text) {
        this.text = text;
    }

    /** The words that a table's status column holds and that users read. */
    public String text() {
        return text;
    }

    static Status of(String text) {
        for (Status status : values()) {
            if (status.text.equals(text)) {
                return status;
            }
        }
        throw new IllegalArgumentException("no status is called \"" + text + "\"");
    }
}
