package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.CostAnswer;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.JointAnswer;

/** Quotes as they are printed: what stands on them, and on how many pages. They are kept under target, to be looked at. */
@QuarkusTest
class QuotePrinterTest {

    private static final Path LOOKED_AT = Path.of("target", "printed");
    private static final String BUGGY = "trail-buggy-rear-bay";

    @Inject
    QuotePrinter printer;

    private record Printed(String text, int pages, float width, float height) {

        void says(String... expected) {
            for (String part : expected) {
                assertTrue(text.contains(part), part + " is not in:\n" + text);
            }
        }
    }

    /** The PDF's text in one line, blanks that hold figures together as plain ones. */
    private Printed print(PrintedQuote quote, QuoteForm form, String name) throws IOException {
        byte[] pdf = printer.pdf(quote, form);
        Files.createDirectories(LOOKED_AT);
        Files.write(LOOKED_AT.resolve(name + "." + form.word() + ".pdf"), pdf);
        Files.writeString(LOOKED_AT.resolve(name + "." + form.word() + ".html"), printer.html(quote, form));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDPage page = document.getPage(0);
            return new Printed(
                    new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " "),
                    document.getNumberOfPages(),
                    page.getMediaBox().getWidth(),
                    page.getMediaBox().getHeight());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boat-cradle-equal-tubes",
                "garden-cart-trailer",
                "hill-climb-buggy-roll-structure",
                "pole-trailer-lattice-beam",
                "smallest",
                BUGGY
            })
    void sampleFramesTakeTwoPagesAtMost(String sample) throws IOException {
        for (UnitSystem units : UnitSystem.values()) {
            PrintedQuote quote = PrintedSamples.of(sample, units);
            for (QuoteForm form : QuoteForm.values()) {
                Printed printed = print(quote, form, sample + "." + units.word());
                if (form == QuoteForm.CUSTOMER && (sample.equals(BUGGY) || sample.startsWith("garden-cart"))) {
                    assertEquals(1, printed.pages, sample + " has few joints: one page, and no few lines on another");
                }
                // 170 joints, with all that is set at each, take the shop floor one more
                int most = sample.startsWith("pole-trailer") && form == QuoteForm.SHOP_FLOOR ? 3 : 2;
                assertTrue(printed.pages <= most, sample + " " + form + ": " + printed.pages + " pages");
                printed.says("page 1 of " + printed.pages, "page " + printed.pages + " of " + printed.pages);
                assertEquals(units == UnitSystem.US, Math.max(printed.width, printed.height) == 792, "letter is 11 in");
                assertEquals(form == QuoteForm.SHOP_FLOOR, printed.width > printed.height, "the shop's lies across");
            }
        }
    }

    /** The example is priced by the pound and the cubic foot. */
    @Test
    void whatThePriceCoversIsToldInTheReadersUnits() throws IOException {
        String inches = print(PrintedSamples.of(BUGGY, UnitSystem.US), QuoteForm.CUSTOMER, "covers-us").text;
        String millimetres = print(PrintedSamples.of(BUGGY, UnitSystem.SI), QuoteForm.CUSTOMER, "covers-si").text;
        assertTrue(
                Pattern.compile("Filler [0-9.]+ lb Gas [0-9.]+ ft³ Electricity [0-9.]+ kWh")
                        .matcher(inches)
                        .find(),
                inches);
        assertTrue(
                Pattern.compile("Filler [0-9.]+ kg Gas [0-9.]+ m³ Electricity [0-9.]+ kWh")
                        .matcher(millimetres)
                        .find(),
                millimetres);
    }

    @Test
    void theCustomerReadsWhatIsOfferedAndWhatItRestsOn() throws IOException {
        PrintedQuote quote = PrintedSamples.of(BUGGY, UnitSystem.US);
        FrameEstimateAnswer answer = quote.answer();
        Printed printed = print(quote, QuoteForm.CUSTOMER, BUGGY + ".us");
        printed.says(
                "Quote Q-000123",
                "Two-seat trail buggy, rear bay",
                "Ridge Lane Frames Unit 4, Ridge Lane",
                "Quote Q-000123",
                "Your reference: Hillside yard, order 17",
                "Date 4 March 2026",
                "Revision 2",
                "Valid until 3 April 2026",
                "Welding only",
                "6 frames, 20 joints each",
                "USD " + Wording.money(answer.cost().total()).replace('\u00a0', ' '),
                "No load was considered",
                "not a welding procedure",
                "Hours in all 3.17 h 19.0 h",
                "While the arc burns 23.06 ft³ 51.3 %",
                "Start surge 4.27 ft³ 9.5 %",
                "R1 2 tube to tube 1.5 × 0.095 in to the same 4130 0.125 in 6.926 in",
                "Please note",
                "Assumed where nothing was stated",
                "Accepted for the customer Name Signature Date",
                "gas temperature 70 °F");
        for (JointAnswer joint : answer.joints()) {
            printed.says(joint.mark() + " " + joint.count());
        }
    }

    @Test
    void theShopsRatesAndMarginAreItsOwn() throws IOException {
        PrintedQuote quote = PrintedSamples.of(BUGGY, UnitSystem.US);
        String text = print(quote, QuoteForm.CUSTOMER, BUGGY + ".us").text;
        CostAnswer cost = quote.answer().cost();
        for (CostAnswer.Line line : cost.lines()) {
            assertTellsNotOf(line, text);
        }
        assertFalse(text.toLowerCase(java.util.Locale.ROOT).contains("margin"), text);
    }

    /** Neither what a line comes to nor what its unit costs; that of a share alone could be any figure. */
    private static void assertTellsNotOf(CostAnswer.Line line, String text) {
        String amount = Wording.money(line.amount()).replace('\u00a0', ' ');
        assertFalse(
                Pattern.compile("(?<![0-9.])" + Pattern.quote(amount) + "(?![0-9.])")
                        .matcher(text)
                        .find(),
                line.item() + " " + amount);
        assertFalse(line.quantity() != null && text.contains(line.rate()), line.item() + " " + line.rate());
    }

    @Test
    void theShopFloorReadsWhatToSet() throws IOException {
        PrintedQuote quote = PrintedSamples.of(BUGGY, UnitSystem.US, request -> {
            ObjectNode joint = (ObjectNode) request.at("/frame/joints/0");
            joint.put("procedure", "WPS 12 rev. 3");
            joint.putObject("backPurge").put("flow", "10 ft3/h").put("time", "3 min");
        });
        print(quote, QuoteForm.SHOP_FLOOR, BUGGY + ".purged")
                .says(
                        "Two-seat trail buggy, rear bay",
                        "6 frames",
                        "R1 2 tube to tube, 4130 1.5 × 0.095 in to the same WPS 12 rev. 3 leg 0.125 in convex 90 A"
                                + " ER70S-2 0.0625 in argon 15 ft³/h nozzle 0.5 in back purge 10 ft³/h 3 min before the"
                                + " arc pre 0.5 s post 9 s 4 tacks 4 runs 300 °F 3 in beyond the joint hold 2 min propane",
                        "H1 4 plug, 4130 plate 0.095 in – fill the hole 90 A",
                        "No load was considered",
                        "not a welding procedure",
                        "28 rods",
                        "In the shop",
                        "phosgene");
    }

    @ParameterizedTest
    @ValueSource(strings = {BUGGY, "hill-climb-buggy-roll-structure", "pole-trailer-lattice-beam"})
    void theShopFloorReadsOfNoMoney(String sample) throws IOException {
        // other work brings the shop's own lines, and gas without a price a caution on what is not priced
        PrintedQuote quote = PrintedSamples.of(sample, UnitSystem.US, request -> {
            ObjectNode prices = (ObjectNode) request.get("prices");
            prices.remove("gas");
            ((ArrayNode) prices.withArrayProperty("otherWork"))
                    .addObject()
                    .put("item", "Fixture")
                    .put("amount", "987.65");
        });
        quote = PrintedSamples.quote(
                quote.answer(), quote.customerReference(), Optional.of("A discount of 4321.00 is in it"));
        String text = print(quote, QuoteForm.SHOP_FLOOR, sample + ".money").text;
        CostAnswer cost = quote.answer().cost();
        assertFalse(text.contains(cost.currency()), text);
        assertFalse(text.contains("4321"), text);
        assertFalse(text.toLowerCase(java.util.Locale.ROOT).matches(".*\\b(price|priced|cost|margin)\\b.*"), text);
        for (CostAnswer.Line line : cost.lines()) {
            assertTellsNotOf(line, text);
        }
        assertFalse(text.contains(cost.total()), text);
    }

    @Test
    void aFrameWithoutPricesSaysSo() throws IOException {
        PrintedQuote quote = PrintedSamples.of(BUGGY, UnitSystem.SI, request -> request.remove("prices"));
        Printed printed = print(quote, QuoteForm.CUSTOMER, BUGGY + ".unpriced");
        printed.says("No price: this is an estimate of work and materials", "Hours in all");
        assertFalse(printed.text.contains("The price covers"), printed.text);
        assertFalse(printed.text.contains("Accepted"), "there is nothing to accept: " + printed.text);
    }

    @Test
    void whatUsersWroteIsTextWhateverItIs() throws IOException {
        String hostile = "<script>alert(1)</script> & \"A\" 'B' {quote.number} </style> \u0001 ]]>";
        PrintedQuote quote = PrintedSamples.quote(
                PrintedSamples.answer(BUGGY, UnitSystem.SI, request -> {
                    ObjectNode frame = (ObjectNode) request.get("frame");
                    frame.put("name", "<img src='http://x.invalid/a.png'/> frame & Söhne");
                    ((ObjectNode) frame.at("/joints/0"))
                            .put("mark", "<b>R1</b>")
                            .put("procedure", "a<br/>b");
                }),
                Optional.of(hostile),
                Optional.of(hostile));
        for (QuoteForm form : QuoteForm.values()) {
            String html = printer.html(quote, form);
            assertFalse(html.contains("<script>alert"), html);
            assertFalse(html.contains("<img"), html);
            assertFalse(html.contains("<b>R1"), html);
            print(quote, form, "hostile").says("<img src='http://x.invalid/a.png'/> frame & Söhne", "<b>R1</b>");
        }
        print(quote, QuoteForm.CUSTOMER, "hostile")
                .says("<script>alert(1)</script> & \"A\" 'B' {quote.number} </style> \u25A1 ]]>");
    }

    @ParameterizedTest
    @EnumSource
    void longNamesStayOnThePage(QuoteForm form) throws IOException {
        String word = "Tragrohrverbindungsknotenblech".repeat(6);
        PrintedQuote quote = PrintedSamples.quote(
                PrintedSamples.answer(BUGGY, UnitSystem.SI, request -> {
                    ObjectNode frame = (ObjectNode) request.get("frame");
                    frame.put("name", word);
                    ((ObjectNode) frame.at("/joints/0"))
                            .put("mark", "M".repeat(40))
                            .put("procedure", "W".repeat(100));
                }),
                Optional.of("R".repeat(200)),
                Optional.of(word.repeat(10)));
        Printed printed = print(quote, form, "long");
        // letters off the page would not be extracted in one piece
        String joined = printed.text.replace(" ", "");
        assertTrue(joined.contains(word), printed.text);
        assertTrue(joined.contains("M".repeat(40)), printed.text);
        assertTrue(printed.pages <= 3, printed.pages + " pages");
    }

    @ParameterizedTest
    @EnumSource
    void aHundredAndFiftyDifferentJointsRunOverPagesUnderTheirHeadings(QuoteForm form) throws IOException {
        PrintedQuote quote = PrintedSamples.of("smallest", UnitSystem.SI, request -> {
            ArrayNode joints = (ArrayNode) request.at("/frame/joints");
            ObjectNode first = (ObjectNode) joints.get(0);
            joints.removeAll();
            for (int i = 0; i < 150; i++) {
                ObjectNode joint = joints.addObject();
                joint.setAll(first.deepCopy());
                joint.put("mark", "J" + (1000 + i));
                joint.putObject("fillet").put("leg", (3 + i * 0.01) + " mm");
            }
        });
        Printed printed = print(quote, form, "many");
        for (int i = 0; i < 150; i++) {
            printed.says("J" + (1000 + i));
        }
        assertTrue(printed.pages >= 3, printed.pages + " pages");
        String heading = form == QuoteForm.CUSTOMER ? "Joint no. Kind" : "Joint no. Parts";
        Matcher headings = Pattern.compile(heading).matcher(printed.text);
        assertTrue(headings.results().count() >= 3, "the table's heading stands on each page");
    }

    @Test
    void lettersOfOtherScriptsStandOrAreSaidToBeMissing() throws IOException {
        FrameEstimateAnswer answer = PrintedSamples.answer(BUGGY, UnitSystem.SI, request -> {});
        String missing = "cannot draw all letters";
        PrintedQuote hebrew = PrintedSamples.quote(answer, Optional.of("הזמנה 17 שלום"), Optional.of("Заказ Ω 17"));
        Printed printed = print(hebrew, QuoteForm.CUSTOMER, "hebrew");
        printed.says("הזמנה", "שלום", "Заказ Ω 17");
        assertFalse(printed.text.contains(missing), printed.text);
        Map<String, String> others = Map.of(
                "自転車のフレーム", "Han, Hiragana, Katakana, signs", "طلب رقم", "Arabic", "\uD83D\uDE42 frame", "signs");
        for (String other : others.keySet()) {
            PrintedQuote quote = PrintedSamples.quote(answer, Optional.of(other), Optional.empty());
            print(quote, QuoteForm.CUSTOMER, "other-script")
                    .says(missing, "(" + others.get(other) + ")", "Quote Q-000123", "Hours in all");
            assertTrue(printer.html(quote, QuoteForm.CUSTOMER).contains(other));
            assertFalse(printer.html(quote, QuoteForm.CUSTOMER).contains(missing));
        }
    }

    @ParameterizedTest
    @EnumSource
    void itsStyleAndScriptAreTheOnesThatTheHeaderAllows(QuoteForm form) throws GeneralSecurityException {
        for (UnitSystem units : UnitSystem.values()) {
            String html = printer.html(PrintedSamples.of(BUGGY, units), form);
            for (String element : List.of("style", "script")) {
                List<MatchResult> found = Pattern.compile("<" + element + ">(.*?)</" + element + ">", Pattern.DOTALL)
                        .matcher(html)
                        .results()
                        .toList();
                assertEquals(1, found.size(), element);
                byte[] digest = MessageDigest.getInstance("SHA-256")
                        .digest(found.get(0).group(1).getBytes(StandardCharsets.UTF_8));
                assertTrue(
                        Pattern.compile(element + "-src [^;]*"
                                        + Pattern.quote(
                                                "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'"))
                                .matcher(printer.contentSecurityPolicy())
                                .find(),
                        element);
            }
            assertFalse(Pattern.compile("style=|<script |href=|src=|url\\(")
                    .matcher(html)
                    .find());
        }
    }

    static Stream<PrintedQuote> quotesToAddUp() {
        Stream<PrintedQuote> samples = Stream.of(
                        "boat-cradle-equal-tubes",
                        "garden-cart-trailer",
                        "pole-trailer-lattice-beam",
                        "smallest",
                        BUGGY)
                .flatMap(sample -> Arrays.stream(UnitSystem.values()).map(units -> PrintedSamples.of(sample, units)));
        SplittableRandom random = new SplittableRandom(20261128);
        Stream<PrintedQuote> others = Stream.generate(() -> PrintedSamples.of(BUGGY, UnitSystem.US, request -> {
                    ((ObjectNode) request.get("frame")).put("quantity", random.nextInt(1, 40));
                    ((ObjectNode) request.get("gas"))
                            .put("postFlow", random.nextInt(20) + " s")
                            .put("leak", random.nextInt(3) * 0.01 + " L/min");
                    ((ObjectNode) request.get("labour"))
                            .put("fitUpPerJoint", random.nextInt(1000) + " s")
                            .put("setUpPerOrder", random.nextInt(10000) + " s");
                }))
                .limit(40);
        return Stream.concat(samples, others);
    }

    /** The number at the beginning of a cell, exactly as it is printed. */
    private static BigDecimal printedIn(String cell) {
        Matcher number =
                Pattern.compile("[0-9]+(?:\u00a0[0-9]{3})*(?:\\.[0-9]+)?").matcher(cell);
        assertTrue(number.lookingAt(), cell);
        return new BigDecimal(number.group().replace("\u00a0", ""));
    }

    private static BigDecimal sum(List<Row> rows, int column) {
        return rows.stream().map(row -> printedIn(row.cells().get(column))).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    @ParameterizedTest
    @MethodSource("quotesToAddUp")
    void whatIsPrintedAddsUpAsItIsPrinted(PrintedQuote quote) {
        CustomerSheet sheet = CustomerSheet.of(quote);
        int last = sheet.hours().size() - 1;
        for (int column : new int[] {1, 2}) {
            assertEquals(
                    printedIn(sheet.hours().get(last).cells().get(column)),
                    sum(sheet.hours().subList(0, last), column),
                    sheet.hours().toString());
        }
        Row gas = sheet.materials().stream()
                .filter(row -> row.cells().get(0).equals("Gas"))
                .findFirst()
                .orElseThrow();
        assertEquals(printedIn(gas.cells().get(2)), sum(sheet.gas(), 1), sheet.gas() + " " + gas);
        assertEquals(new BigDecimal("100.0"), sum(sheet.gas(), 2), sheet.gas().toString());
    }

    /** Words of whoever builds the program or keeps the shop's figures. */
    @ParameterizedTest
    @ValueSource(strings = {BUGGY, "smallest", "hill-climb-buggy-roll-structure", "pole-trailer-lattice-beam"})
    void theCustomerReadsNoWordsOfThoseWhoMadeTheProgram(String sample) {
        String html = printer.html(PrintedSamples.of(sample, UnitSystem.US), QuoteForm.CUSTOMER);
        for (String word :
                List.of("this project", "no source", "see scope", "JSON", "your own timed", ">false", ">true")) {
            assertFalse(html.contains(word), word);
        }
    }

    @Test
    void theButtonThatPrintsIsNotOnPaper() throws IOException {
        PrintedQuote quote = PrintedSamples.of(BUGGY, UnitSystem.SI);
        assertTrue(
                printer.html(quote, QuoteForm.SHOP_FLOOR).contains("<button type=\"button\" hidden=\"hidden\">Print"));
        assertFalse(print(quote, QuoteForm.SHOP_FLOOR, "button").text.contains("Print"));
    }
}
