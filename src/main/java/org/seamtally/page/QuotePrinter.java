package org.seamtally.page;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Set;

/** Prints quotes. The same quote gives the same HTML; a PDF differs in its time of making. */
@ApplicationScoped
public class QuotePrinter {

    private final Typeface typeface = Typeface.only();

    /** A quote as a document of its own: styled, with a button that prints it, asking nothing of any host. */
    public String html(PrintedQuote quote, QuoteForm form) {
        return html(quote, form, Look.onScreen(Paper.of(quote, form)));
    }

    /** The header that keeps a browser from taking anything but that document's own style and script. */
    public String contentSecurityPolicy() {
        return Paper.contentSecurityPolicy();
    }

    /** The same document as PDF, on A4 or US letter by the answer's units. */
    public byte[] pdf(PrintedQuote quote, QuoteForm form) {
        Paper paper = Paper.of(quote, form);
        String html = html(quote, form, Look.onPaper(paper, ""));
        Set<String> missing = typeface.scriptsLackedBy(html);
        if (!missing.isEmpty()) {
            html = html(quote, form, Look.onPaper(paper, String.join(", ", missing)));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        typeface.addTo(builder);
        Bidirectional.addTo(builder);
        // a box for a letter that the typeface lacks
        builder.useReplacementText("\u25a1");
        // nothing is fetched: a quote's text is its users' own
        builder.useUriResolver((base, uri) -> null);
        builder.withHtmlContent(html, null);
        builder.withProducer("Seamtally");
        // tagged, so that it can be read aloud; it also takes no typeface but its own
        builder.usePdfUaAccessibility(true);
        builder.toStream(out);
        try {
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static String html(PrintedQuote quote, QuoteForm form, Look look) {
        String html = switch (form) {
            case CUSTOMER -> Sheets.customer(CustomerSheet.of(quote), look).render();
            case SHOP_FLOOR -> Sheets.shopFloor(ShopFloorSheet.of(quote), look).render();
        };
        return printable(html);
    }

    /** What XML has no letter for stands as the sign for an unreadable letter. */
    private static String printable(String html) {
        return html.codePoints()
                .map(letter -> isXml(letter) ? letter : 0xFFFD)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** XML 1.0, production 2. */
    private static boolean isXml(int letter) {
        return letter == '\t'
                || letter == '\n'
                || letter == '\r'
                || letter >= 0x20 && letter <= 0xD7FF
                || letter >= 0xE000 && letter <= 0xFFFD
                || letter >= 0x10000;
    }
}
