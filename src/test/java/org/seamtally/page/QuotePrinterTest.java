package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

/** Quotes as they are printed: what stands on them, and on how many pages. */
@QuarkusTest
class QuotePrinterTest {

    static final Path LOOKED_AT = Path.of("target", "printed");

    @Inject
    QuotePrinter printer;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boat-cradle-equal-tubes",
                "garden-cart-trailer",
                "hill-climb-buggy-roll-structure",
                "pole-trailer-lattice-beam",
                "smallest",
                "trail-buggy-rear-bay"
            })
    void sampleFramesTakeTwoPagesAtMost(String sample) throws IOException {
        for (UnitSystem units : UnitSystem.values()) {
            PrintedQuote quote = PrintedSamples.of(sample, units);
            for (QuoteForm form : QuoteForm.values()) {
                byte[] pdf = printer.pdf(quote, form);
                keep(sample + "." + units.word() + "." + form.word(), pdf, printer.html(quote, form));
                try (PDDocument document = Loader.loadPDF(pdf)) {
                    assertTrue(document.getNumberOfPages() <= 2, sample + ": " + document.getNumberOfPages());
                }
            }
        }
    }

    private static void keep(String name, byte[] pdf, String html) throws IOException {
        Files.createDirectories(LOOKED_AT);
        Files.write(LOOKED_AT.resolve(name + ".pdf"), pdf);
        Files.writeString(LOOKED_AT.resolve(name + ".html"), html);
    }
}
