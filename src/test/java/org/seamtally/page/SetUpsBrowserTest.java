package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** Hoses are compared in a real browser. */
@QuarkusTest
class SetUpsBrowserTest {

    @TestHTTPResource("/")
    URL page;

    @Test
    void hosesAreCompared() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.open("#set-ups");
            browser.waitForText("#compared", "small bore");
            assertEquals(5, browser.all("#compared tbody tr").size());
            String before = browser.text("#compared tbody tr:nth-child(3)");
            var bore = browser.one("#set-up-cards section:nth-child(3) [data-path='hose.insideDiameter']");
            bore.sendKeys("3/16 in", Keys.TAB);
            var length = browser.one("#set-up-cards section:nth-child(3) [data-path='hose.length']");
            length.sendKeys("12 ft", Keys.TAB);
            browser.waitUntil(
                    "a shorter and narrower hose is computed",
                    () -> !browser.text("#compared tbody tr:nth-child(3)").equals(before));
            bore.sendKeys(Keys.chord(Keys.CONTROL, "a"), "9 psi", Keys.TAB);
            browser.waitUntil("the bore is marked", () -> "true".equals(bore.getDomAttribute("aria-invalid")));
            bore.sendKeys(Keys.chord(Keys.CONTROL, "a"), "0.16", Keys.TAB);
            assertEquals("0.16 in", bore.getDomProperty("value"));
            browser.waitUntil("it is mended", () -> bore.getDomAttribute("aria-invalid") == null);
            browser.picture("set-ups");
            assertEquals(List.of(), browser.complaints("status of 422"));
        }
    }

    @Test
    void aSetUpIsUsedInTheFrameAndTheFirstIsTheFrame() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            String price = browser.text("#price .total .amount");
            browser.open("#set-ups");
            browser.waitForText("#compared", "small bore");
            String first = "#set-up-cards section:nth-child(1) ";
            String second = "#set-up-cards section:nth-child(2) ";
            assertEquals("0.25 in", browser.value(first + "[data-path='hose.insideDiameter']"));
            browser.one(second + "> div > button").click();
            assertEquals("0.112 in", browser.value(first + "[data-path='hose.insideDiameter']"));
            assertEquals("In the frame", browser.text(second + "> div > button"));
            browser.one(second + "a[href='#frame']").click();
            browser.waitForText(".price .gas-line", "25 ft hose, 0.112 in bore");
            assertEquals("0.112 in", browser.value("#settings [data-path='gas.hose.insideDiameter']"));
            browser.waitUntil(
                    "less gas is thrown away, for less money",
                    () -> !browser.text("#price .total .amount").equals(price));

            browser.one("nav a[href='#set-ups']").click();
            browser.one(second + "[role=status] button").click();
            assertEquals("0.25 in", browser.value(first + "[data-path='hose.insideDiameter']"));
            assertEquals("Use in the frame", browser.text(second + "> div > button"));
            browser.one(first + "[data-path='hose.length']").sendKeys(Keys.chord(Keys.CONTROL, "a"), "50", Keys.TAB);
            browser.waitForText("#compared", "as today");
            browser.one(first + "a[href='#gas-picture']").click();
            browser.waitForText("#gas-picture + .gas-line", "50 ft hose, 0.25 in bore");
            assertEquals("50 ft", browser.value("#settings [data-path='gas.hose.length']"));
            assertEquals(List.of(), browser.complaints("status of 422"));
        }
    }

    @Test
    void whatTheFramesGasIsRefusedForStandsAtTheFirst() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.open("#set-ups");
            browser.waitForText("#compared", "small bore");
            var length = browser.one("#set-up-cards section:nth-child(1) [data-path='hose.length']");
            length.sendKeys(Keys.chord(Keys.CONTROL, "a"), "9 psi", Keys.TAB);
            browser.waitUntil("the length is marked", () -> "true".equals(length.getDomAttribute("aria-invalid")));
            assertEquals(List.of(), browser.complaints("status of 422"));
        }
    }
}
