package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** Each picture, drawn from the service's own answers in a real browser. They are kept under target, to be looked at. */
@QuarkusTest
class PicturesBrowserTest {

    @TestHTTPResource("/pictures-harness.html")
    URL harness;

    private Browser browser;

    @BeforeEach
    void open() {
        browser = Browser.on(harness);
        // curves are drawn once their width is known
        browser.one("#transient canvas");
        browser.one("#payback canvas");
        browser.one("#ring svg.unrolled");
    }

    @AfterEach
    void close() {
        assertEquals(List.of(), browser.complaints());
        browser.close();
    }

    private String value(String css) {
        return (String) browser.js("return document.querySelector(arguments[0]).textContent", css);
    }

    @ParameterizedTest
    @CsvSource({"1280, light", "1280, dark", "375, light"})
    void theyAreDrawnAndTheAccessibilityEngineFindsNothing(int width, String colours) {
        browser.dark(colours.equals("dark"));
        browser.width(width, 900);
        browser.waitUntil("they fit", () -> (Boolean) browser.js(
                "return document.documentElement.scrollWidth <= arguments[0] && [...document.querySelectorAll('.curves canvas')].every((c) => c.getBoundingClientRect().right <= arguments[0])",
                width));
        browser.picture("pictures-" + width + "-" + colours);
        assertEquals(List.of(), browser.accessibilityFaults());
    }

    @Test
    void theGasBarsPartsAddUpAndAreToldInWords() {
        assertEquals(6, browser.all("#gas .legend tbody tr").size());
        Number shares = (Number)
                browser.js(
                        "return [...document.querySelectorAll('#gas .bar-of-parts > rect:not(.edge)')].reduce((sum, part) => sum + parseFloat(part.getAttribute('width')), 0)");
        assertEquals(100, shares.doubleValue(), 1e-6);
        browser.waitForText("#gas figcaption", "start surge and leaks throw away");
        assertEquals(2, browser.all("#gas .wasted").size());
    }

    @Test
    void theMoneysLinesAreTheQuotes() {
        assertTrue(browser.all("#money tbody tr").size() >= 6);
        browser.waitForText("#money figcaption", "Labour is");
        assertEquals("", value("#none"));
    }

    @Test
    void theSeamIsReadWithTheKeys() {
        browser.waitForText("#equal figcaption", "dihedral angle 90 to 180°");
        browser.one("#equal input").sendKeys(Keys.HOME);
        browser.waitForText("#equal .told", "0\u00a0in along: 180°");
        browser.one("#equal input").sendKeys(Keys.END, Keys.ARROW_LEFT);
        assertTrue(value("#equal .told").contains(", a groove"), value("#equal .told"));
        assertEquals(
                value("#equal .told"),
                browser.js("return document.querySelector('#equal input').getAttribute('aria-valuetext')"));
        browser.waitForText("#ring figcaption", "90° all along");
    }

    @Test
    void curvesAreReadWithTheKeys() {
        browser.one("#transient .curves").sendKeys(Keys.HOME);
        browser.waitForText("#transient .told", "0\u00a0s: as today");
        String first = value("#transient .told");
        browser.one("#transient .curves").sendKeys(Keys.ARROW_RIGHT);
        assertTrue(!value("#transient .told").equals(first));
        browser.one("#payback .curves").sendKeys(Keys.END);
        browser.waitForText("#payback .told", "USD");
        assertEquals(5, browser.all("#transient tbody tr").size());
        assertTrue(value("#transient .keys-of-curves").contains("turbulent above"));
        assertEquals(4, browser.all("#payback tbody tr").size());
    }
}
