package org.seamtally.api;

/** What a printed quote is sent as. */
enum PrintFormat {
    HTML("html", "text/html; charset=UTF-8"),
    PDF("pdf", "application/pdf");

    private final String word;
    private final String mediaType;

    PrintFormat(String word, String mediaType) {
        this.word = word;
        this.mediaType = mediaType;
    }

    /** The word that requests use, and the ending of a file's name. */
    String word() {
        return word;
    }

    String mediaType() {
        return mediaType;
    }
}
