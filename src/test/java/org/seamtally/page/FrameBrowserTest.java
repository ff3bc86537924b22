package org.seamtally.page;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** A frame is typed, pasted, mended and priced in a real browser. */
@QuarkusTest
class FrameBrowserTest {

    @TestHTTPResource("/")
    URL page;

    private Browser browser;

    @BeforeEach
    void open() {
        browser = Browser.on(page);
    }

    @AfterEach
    void close() {
        try (Browser opened = browser) {
            // the browser itself tells of each refusal
            assertEquals(List.of(), opened.complaints("status of 422"));
        }
    }

    /** The price that the service gives for a request that was written without the page. */
    private static String price(String request) {
        return given().contentType("application/json")
                .body(request)
                .post("/v1/frame-estimates")
                .then()
                .statusCode(200)
                .extract()
                .path("cost.total");
    }

    private void waitForPrice(String total) {
        browser.waitUntil(
                "the price is " + total + "; shown is: " + browser.text("#price-body"),
                () -> browser.text("#price .total .amount")
                                .replace("\u202f", "")
                                .equals(total)
                        && browser.all("#price .stale").isEmpty());
    }

    private void tab(int times) {
        for (int i = 0; i < times; i++) {
            browser.type(Keys.TAB);
        }
    }

    private void price(String path, String value) {
        browser.js(
                "document.querySelector('[data-path=\"' + arguments[0] + '\"]').closest('details').open = true", path);
        var field = browser.one("[data-path='" + path + "']");
        field.click();
        field.sendKeys(value, Keys.TAB);
    }

    @Test
    void aFrameIsTypedAndItsPriceSeen() {
        browser.cell(1, "mark").click();
        for (String value : List.of("A1", "2", "tube-to-tube", "1.5 in", "0.095 in", "38.1 mm", "0.095 in")) {
            browser.type(value, Keys.TAB);
        }
        price("prices.currency", "USD");
        price("prices.labour", "65");
        assertEquals("65/h", browser.one("[data-path='prices.labour']").getDomProperty("value"));
        waitForPrice(price("""
                        {"frame": {"joints": [{"mark": "A1", "count": 2, "kind": "tube-to-tube",
                          "branch": {"outsideDiameter": "1.5 in", "wall": "0.095 in"},
                          "main": {"outsideDiameter": "1.5 in", "wall": "0.095 in"}}]},
                         "prices": {"currency": "USD", "labour": "65.00/h"}}
                        """));
        browser.waitForText("#cautions", "No load was considered");
        browser.waitForText("#assumptions", "square unless the drawing says otherwise");
        browser.waitForText("#spoken", "Price ");
        browser.picture("frame-typed");
    }

    @Test
    void thePriceFollowsEachKey() {
        browser.startFrom("trail-buggy-rear-bay.json");
        String before = browser.text("#price .total .amount");
        browser.cell(1, "count").click();
        browser.type("9");
        browser.waitUntil(
                "the price moves while the cell is being written in",
                () -> !browser.text("#price .total .amount").equals(before));
        browser.type(Keys.ESCAPE);
        browser.waitUntil(
                "the price is back", () -> browser.text("#price .total .amount").equals(before));
        assertEquals("2", browser.cell(1, "count").getText());
    }

    @Test
    void aBareNumberGetsThePagesUnitAndKeepsIt() {
        browser.cell(1, "branch outside diameter").click();
        browser.type("38.1", Keys.TAB);
        assertEquals("38.1 mm", browser.cell(1, "branch outside diameter").getText());
        browser.one("input[name=units][value=us]").click();
        browser.cell(1, "branch wall").click();
        browser.type("0.095", Keys.TAB, "1-1/2", Keys.TAB, "3/32\"", Keys.TAB);
        assertEquals("38.1 mm", browser.cell(1, "branch outside diameter").getText());
        assertEquals("0.095 in", browser.cell(1, "branch wall").getText());
        assertEquals("1-1/2 in", browser.cell(1, "main outside diameter").getText());
        assertEquals("3/32\"", browser.cell(1, "main wall").getText());
        browser.waitUntil(
                "the seam is told in inches",
                () -> browser.cell(1, "seam").getText().endsWith("in"));
        browser.open("#frame");
        browser.js("location.reload()");
        browser.waitUntil(
                "the frame is kept", () -> browser.all("#joints tbody tr").size() == 2);
        assertTrue(browser.one("input[name=units][value=us]").isSelected(), "the unit switch is kept");
        assertEquals("38.1 mm", browser.cell(1, "branch outside diameter").getText());
    }

    @Test
    void anExampleComesInItsOwnUnitsUntilTheSwitchIsUsed() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitUntil(
                "inches come with the inch example",
                () -> browser.cell(1, "seam").getText().endsWith("in"));
        assertTrue(browser.one("input[name=units][value=us]").isSelected());
        browser.waitUntil(
                "texts are told in them too",
                () -> browser.text("#cautions").contains("302 °F")
                        && !browser.text("#cautions").contains("°C"));
        browser.waitForText("#assumptions", "°F");
        assertFalse(browser.text("#assumptions").contains("°C"), browser.text("#assumptions"));
        browser.waitForText("#joint-body .review", "1470 to 930 °F");
        browser.startFrom("garden-cart-trailer.json");
        browser.waitUntil(
                "millimetres come with the other",
                () -> browser.cell(1, "seam").getText().endsWith("mm"));
        browser.one("input[name=units][value=us]").click();
        browser.one("input[name=units][value=si]").click();
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitUntil(
                "the example is there",
                () -> browser.cell(1, "branch outside diameter").getText().equals("1.5 in"));
        browser.waitUntil(
                "what was chosen stays", () -> browser.cell(1, "seam").getText().endsWith("mm"));
    }

    @Test
    void aWindowInWhichNothingWasTypedLeavesTheFrameOfAnotherAlone() {
        browser.startFrom("garden-cart-trailer.json");
        browser.waitUntil(
                "the frame is kept",
                () -> String.valueOf(browser.js("return localStorage.getItem('seamtally.frame')"))
                        .contains("Garden cart"));
        browser.open("");
        browser.js("location.reload()");
        browser.one("#price .total");
        // as another window does
        browser.js("localStorage.setItem('seamtally.frame', arguments[0])", "{\"frame\":{\"name\":\"Another\"}}");
        browser.js("dispatchEvent(new PageTransitionEvent('pagehide'))");
        assertEquals(
                "{\"frame\":{\"name\":\"Another\"}}", browser.js("return localStorage.getItem('seamtally.frame')"));
    }

    private void paste(String block) {
        browser.js("""
                const data = new DataTransfer();
                data.setData('text/plain', arguments[0]);
                document.activeElement.dispatchEvent(new ClipboardEvent('paste', {clipboardData: data, bubbles: true, cancelable: true}));
                """, block);
    }

    @Test
    void aBlockWithItsHeadingsIsPasted() {
        browser.cell(1, "mark").click();
        paste("""
                Mark\tKind\tCount\tBranch outside diameter [mm]\tbranch.wall\tMain outside diameter\tmain wall\tProcedure\tColour
                P1\ttube-to-tube\t3\t30\t"2 mm\t"\t40 mm\t3 mm\t"WPS 12 of ""May\"""\tred
                P2\tplug\t4
                """);
        assertEquals("30 mm", browser.cell(1, "branch outside diameter").getText());
        assertEquals("WPS 12 of \"May\"", browser.cell(1, "procedure").getText());
        assertEquals("2 mm", browser.cell(1, "branch wall").getText());
        assertEquals("plug", browser.cell(2, "kind").getText());
        browser.waitForText("#to-mend", "Columns left out, since there is no such field: Colour");
        // the second row has no sizes yet, and that is said where they go
        browser.waitForText("#to-mend", "row 2, hole diameter");
        browser.cell(2, "hole diameter").click();
        browser.type("9", Keys.TAB, "3", Keys.TAB);
        browser.waitUntil(
                "both rows are estimated", () -> browser.all("#to-mend li").isEmpty());
        browser.waitUntil(
                "the plug has its gas", () -> browser.cell(2, "gas").getText().endsWith("L"));
        browser.picture("pasted");
    }

    @Test
    void aBlockIsCopiedAndPastedByKeys() {
        browser.startFrom("garden-cart-trailer.json");
        browser.cell(2, "branch outside diameter").click();
        browser.chord(Keys.SHIFT, Keys.ARROW_DOWN);
        browser.chord(Keys.SHIFT, Keys.ARROW_RIGHT);
        assertEquals(4, browser.all("#joints td[aria-selected=true]").size());
        browser.chord(Keys.CONTROL, "c");
        browser.cell(1, "branch outside diameter").click();
        browser.chord(Keys.CONTROL, "v");
        browser.waitUntil(
                "the cells are pasted",
                () -> browser.cell(1, "branch outside diameter").getText().equals("25 mm")
                        && browser.cell(2, "branch outside diameter").getText().equals("30 mm"));
        assertEquals("2 mm", browser.cell(2, "branch wall").getText());
        browser.chord(Keys.CONTROL, "z");
        assertEquals("30 mm", browser.cell(1, "branch outside diameter").getText());
    }

    @Test
    void aBadCellSaysWhatIsWrongWithIt() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.cell(1, "branch wall").click();
        browser.type("2 psi", Keys.ENTER);
        browser.waitUntil(
                "the cell is marked",
                () -> "true".equals(browser.cell(1, "branch wall").getDomAttribute("aria-invalid")));
        browser.waitForText("#to-mend", "row 1, branch wall");
        browser.waitForText("#price", "one thing is to be mended");
        browser.picture("bad-cell");
        browser.one("#to-mend button").click();
        browser.waitForText("#cell-note", "psi");
        assertEquals(
                browser.cell(1, "branch wall"),
                browser.js("return document.activeElement"),
                "the list leads to the cell");
        browser.type("0.095 in", Keys.ENTER);
        browser.waitUntil(
                "nothing is to be mended", () -> browser.all("#to-mend li").isEmpty());
        assertEquals(null, browser.cell(1, "branch wall").getDomAttribute("aria-invalid"));
    }

    @Test
    void theKeyboardAloneIsEnough() {
        // Tab from the top of the page into the list
        browser.waitUntil("the list is reached", () -> {
            browser.type(Keys.TAB);
            return Boolean.TRUE.equals(browser.js("return document.activeElement.matches('#joints td')"));
        });
        browser.type("K1", Keys.TAB, "1", Keys.TAB, "plug", Keys.TAB);
        assertEquals("K1", browser.cell(1, "mark").getText());
        browser.cell(1, "hole diameter").click();
        browser.type("9 mm", Keys.TAB, "2.5 mm", Keys.ENTER);
        browser.waitUntil(
                "the plug is estimated", () -> browser.cell(1, "gas").getText().endsWith("L"));
        browser.type(
                Keys.ARROW_UP,
                Keys.F2,
                Keys.END,
                Keys.BACK_SPACE,
                Keys.BACK_SPACE,
                Keys.BACK_SPACE,
                " cm",
                Keys.ESCAPE);
        assertEquals("2.5 mm", browser.cell(1, "depth").getText(), "Esc leaves a cell as it was");
        browser.chord(Keys.CONTROL, "d");
        assertEquals("plug", browser.cell(2, "kind").getText(), "a row is doubled");
        assertEquals("", browser.cell(2, "mark").getText(), "no two joints have one mark");
        browser.type(Keys.DELETE);
        assertEquals("", browser.cell(2, "depth").getText());
        browser.chord(Keys.CONTROL, Keys.DELETE);
        browser.chord(Keys.CONTROL, Keys.ENTER);
        browser.chord(Keys.CONTROL, "z");
        browser.waitUntil(
                "one joint is left", () -> browser.all("#joints tbody tr").size() == 2);
        browser.type(Keys.ESCAPE, Keys.TAB);
        assertFalse(
                Boolean.TRUE.equals(browser.js("return document.activeElement.matches('#joints td')")),
                "Esc, then Tab leaves the list");
    }

    @Test
    void aKindTakesItsSizesWithIt() {
        browser.startFrom("garden-cart-trailer.json");
        browser.cell(1, "kind").click();
        browser.type("plug", Keys.ENTER);
        browser.waitForText("#to-mend", "Taken out, since a plug has none: branch outside diameter");
        browser.chord(Keys.CONTROL, "z");
        assertEquals("30 mm", browser.cell(1, "branch outside diameter").getText());
        browser.waitUntil(
                "it is estimated again", () -> browser.all("#to-mend li").isEmpty());
    }

    @Test
    void aJointsOwnSettingSaysWhatIsWrongWithIt() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.cell(2, "mark").click();
        browser.waitForText("#joint-title", "Joint P1");
        browser.js("document.querySelector('.setting.own').open = true");
        browser.one(".own [data-path='gas.hose.length']").sendKeys("long");
        browser.waitForText("#to-mend", "row 2, gas hose length");
        browser.waitUntil(
                "the field is marked",
                () -> "true"
                        .equals(browser.one(".own [data-path='gas.hose.length']")
                                .getDomAttribute("aria-invalid")));
        browser.waitForText(".own", "holds no number");
        browser.js("scrollTo(0, 0)");
        browser.one("#save-quote").click();
        browser.one("form.save button[value=new]").click();
        browser.waitForText("#save-place [role=alert]", "row 2, gas hose length");
    }

    @Test
    void whatIsAssumedStandsAtItsField() {
        browser.startFrom("boat-cradle-equal-tubes.json");
        browser.js("document.querySelectorAll('.setting').forEach((one) => one.open = true)");
        browser.waitUntil(
                "the flow's default stands at the flow",
                () -> browser.one("#settings [data-path='gas.flow']")
                        .findElement(org.openqa.selenium.By.xpath(".."))
                        .getText()
                        .contains("assumed 15 ft³/h"));
    }

    @Test
    void theSteelReviewStandsBesideTheJoint() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitForText("#joint-body", "Steel review: 4130");
        // preheated, as its caution says too
        browser.waitForText("#joint-body .review", "welded from 300");
        browser.waitForText("#joint-body .cautions", "welded from 300 °F");
        browser.cell(3, "mark").click();
        browser.waitForText("#joint-title", "Joint G1");
        browser.waitForText("#joint-body", "ER80S-D2");
    }

    @Test
    void theJointThatWasWrittenInStaysInHandUntilAnotherIsGoneTo() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitForText("#joint-title", "Joint R1, row 1");
        String before = browser.text("#joint-body .strip");
        browser.cell(1, "branch outside diameter").click();
        browser.type("1.25 in", Keys.ENTER);
        assertEquals(
                browser.cell(2, "branch outside diameter"),
                browser.js("return document.activeElement"),
                "Enter goes down");
        browser.waitUntil(
                "the joint written in is shown anew",
                () -> !browser.text("#joint-body .strip").equals(before));
        assertEquals("Joint R1, row 1", browser.text("#joint-title"));
        browser.type(Keys.ARROW_DOWN);
        browser.waitForText("#joint-title", "Joint G1, row 3");
        // writing in another takes that one in hand
        browser.cell(1, "count").click();
        browser.type("3", Keys.ENTER, "5");
        browser.waitForText("#joint-title", "Joint P1, row 2");
        browser.type(Keys.ENTER, Keys.ARROW_UP);
        browser.chord(Keys.CONTROL, Keys.ARROW_DOWN);
        assertEquals(
                browser.cell(6, "count"), browser.js("return document.activeElement"), "where the next joint begins");
        browser.waitForText("#joint-title", "Joint P1, row 2");
        assertTrue(
                browser.one("#joint-body .strip").isDisplayed(), "a row without a joint leaves the last one in sight");
        assertEquals("2", browser.text("#joints tr.current > th"), "the list marks the joint that is shown beside it");
    }

    @Test
    void theHoseIsChangedFromThePriceAndFromThePicture() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitForText(".price .gas-line", "25 ft hose, 0.25 in bore, 0.025 in orifice, 50 psi, 15 ft³/h");
        browser.waitForText("#gas-picture", "Start surge");
        String picture = browser.text("#gas-picture");
        browser.one(".price .gas-line button").click();
        var length = browser.one("#settings [data-path='gas.hose.length']");
        assertEquals(length, browser.js("return document.activeElement"), "the hose is led to");
        assertTrue(length.isDisplayed());
        length.sendKeys(Keys.chord(Keys.CONTROL, "a"), "12.5", Keys.TAB);
        browser.waitForText(".price .gas-line", "12.5 ft hose");
        browser.waitForText("#settings", "12.5 ft hose, 0.25 in bore");
        browser.waitUntil(
                "less gas is stored in half the hose",
                () -> !browser.text("#gas-picture").equals(picture));
        browser.one("#gas-picture + .gas-line button").click();
        assertEquals(length, browser.js("return document.activeElement"));
        length.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE);
        browser.waitForText("#gas-picture + .gas-line", "300 in hose (assumed), 0.25 in bore");
        browser.js("scrollTo(0, 0)");
        browser.one("#new-frame").click();
        browser.waitUntil(
                "a frame of which nothing is known yet has no gas settings to tell",
                () -> !browser.one(".price .gas-line").isDisplayed());
    }
}
