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
}
