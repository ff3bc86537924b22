package org.seamtally.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.stream.Collectors;
import org.seamtally.wire.FrameEstimateAnswer;

/** The paper a form is laid out for: US letter for inches, A4 for millimetres. The shop floor's table lies across. */
enum Paper {
    A4("a4 portrait"),
    A4_ACROSS("a4 landscape"),
    LETTER("letter portrait"),
    LETTER_ACROSS("letter landscape");

    private final String size;

    Paper(String size) {
        this.size = size;
    }

    static Paper of(PrintedQuote quote, QuoteForm form) {
        boolean inches = inches(quote.answer());
        return switch (form) {
            case CUSTOMER -> inches ? LETTER : A4;
            case SHOP_FLOOR -> inches ? LETTER_ACROSS : A4_ACROSS;
        };
    }

    /** Whether an answer is told in inches. */
    static boolean inches(FrameEstimateAnswer answer) {
        return answer.perFrame().seam().length().unit().equals("in");
    }

    /** The style sheet of paper. */
    String onPaper() {
        return "\n@page { size: " + size + "; }\n" + read("print.css");
    }

    /** The style sheet of a document that is looked at before it is printed, if ever. */
    String onScreen() {
        return onPaper() + read("screen.css");
    }

    /** The script of a document that is looked at: it prints. */
    static String script() {
        return "\n" + read("print.js");
    }

    /** What a browser is to take of a printed quote: its own style sheet and script, known by their digests, and nothing else. */
    static String contentSecurityPolicy() {
        String styles =
                Arrays.stream(values()).map(paper -> digest(paper.onScreen())).collect(Collectors.joining(" "));
        return "default-src 'none'; style-src " + styles + "; script-src " + digest(script())
                + "; base-uri 'none'; form-action 'none'; frame-ancestors 'self'";
    }

    private static String digest(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static String read(String resource) {
        try (InputStream in = Paper.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
