package org.seamtally.page;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/** The typeface of a printed quote: Latin, Greek, Cyrillic and Hebrew letters, embedded as far as they are used. */
final class Typeface implements FontMapper {

    private static final String FAMILY = "Liberation Sans";

    private static final Set<Character.UnicodeScript> NONE = EnumSet.of(
            Character.UnicodeScript.COMMON, Character.UnicodeScript.INHERITED, Character.UnicodeScript.UNKNOWN);

    private final byte[] regular = read("Regular");
    private final byte[] bold = read("Bold");
    private final TrueTypeFont font;
    private final CmapLookup letters;

    private Typeface() {
        try {
            font = new TTFParser().parse(new RandomAccessReadBuffer(regular));
            letters = font.getUnicodeCmapLookup();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The typeface, which the PDF library is told to take for any other: it would look through the machine's for one. */
    static Typeface only() {
        Typeface typeface = new Typeface();
        FontMappers.set(typeface);
        return typeface;
    }

    void addTo(PdfRendererBuilder builder) {
        builder.useFont(() -> new ByteArrayInputStream(regular), FAMILY, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> new ByteArrayInputStream(bold), FAMILY, 700, FontStyle.NORMAL, true);
    }

    /**
     * The scripts of those letters of a text that this typeface has not, in the order of their names, such as {@code Arabic,
     * Han}; signs that belong to no script are told as signs.
     */
    Set<String> scriptsLackedBy(String text) {
        return text.codePoints()
                .filter(letter -> !Character.isWhitespace(letter) && letters.getGlyphId(letter) == 0)
                .mapToObj(letter -> script(Character.UnicodeScript.of(letter)))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String script(Character.UnicodeScript script) {
        if (NONE.contains(script)) {
            return "signs";
        }
        String name = script.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(font, true);
    }

    @Override
    public CIDFontMapping getCIDFont(String baseFont, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
        return new CIDFontMapping(null, font, true);
    }

    private static byte[] read(String weight) {
        String resource = "/liberation/LiberationSans-" + weight + ".ttf";
        try (InputStream in = Typeface.class.getResourceAsStream(resource)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
