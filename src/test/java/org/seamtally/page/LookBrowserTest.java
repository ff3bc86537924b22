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

/** The page on wide and narrow screens, light and dark; what it loads, and what an accessibility engine finds. */
@QuarkusTest
class LookBrowserTest {

    @TestHTTPResource("/")
    URL page;

    private Browser browser;

    @BeforeEach
    void open() {
        browser = Browser.on(page);
    }

    @AfterEach
    void close() {
        browser.close();
    }

    @ParameterizedTest
    @CsvSource({"frame, light", "frame, dark", "set-ups, light", "set-ups, dark", "batches, light", "batches, dark"})
    void theAccessibilityEngineFindsNothing(String part, String colours) {
        browser.dark(colours.equals("dark"));
        browser.startFrom("hill-climb-buggy-roll-structure.json");
        if (part.equals("frame")) {
            browser.waitForText("#joint-body", "Steel review");
            browser.js("document.querySelectorAll('.setting').forEach((one) => one.open = true)");
            browser.one("#seam-picture svg");
            browser.one("#gas-picture table");
        } else {
            browser.open("#" + part);
            browser.one(part.equals("set-ups") ? "#payback-picture canvas" : "#batch-list > *");
        }
        browser.picture(part + "-" + colours);
        assertEquals(List.of(), browser.accessibilityFaults());
        assertEquals(List.of(), browser.complaints());
    }

    @ParameterizedTest
    @CsvSource({"frame", "set-ups", "quotes", "batches"})
    void aNarrowScreenIsEnough(String part) {
        browser.width(375, 800);
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.open("#" + part);
        browser.picture(part + "-375");
        assertEquals(375L, browser.js("return document.documentElement.scrollWidth"), "nothing sticks out sideways");
        // WCAG 2.2, 2.5.8: targets of 24 by 24 CSS pixels; a link inside a sentence and a grid's cells by their spacing
        assertEquals(List.of(), browser.js("""
                        return [...document.querySelectorAll('button, select, input:not([type=radio]):not(.unseen), summary, nav a, a.button')]
                          .filter((one) => one.checkVisibility())
                          .map((one) => [one, one.closest('label') ?? one])
                          .filter(([, target]) => target.getBoundingClientRect().height < 24 || target.getBoundingClientRect().width < 24)
                          .map(([one]) => one.outerHTML.slice(0, 100));
                        """));
    }

    @Test
    void cautionsAndAssumptionsAreThereInFullAndNeverOutOfReach() {
        browser.startFrom("hill-climb-buggy-roll-structure.json");
        browser.waitForText("#cautions", "No load was considered");
        for (int width : List.of(1280, 375)) {
            browser.width(width, 800);
            for (String part : List.of("#cautions", "#assumptions")) {
                assertTrue(browser.one(part).isDisplayed(), part + " is behind no click");
                assertTrue((Boolean) browser.js("""
                                const box = document.querySelector(arguments[0]);
                                const overflow = getComputedStyle(box).overflowY;
                                return overflow === 'visible' && box.scrollHeight - box.clientHeight <= 1;
                                """, part), part + " is no box to scroll in");
            }
            for (String part : List.of("#price .total", "#price .gas-line", "#said")) {
                assertTrue((Boolean) browser.js("""
                                window.scrollTo(0, document.documentElement.scrollHeight / 3);
                                const box = document.querySelector(arguments[0]).getBoundingClientRect();
                                return box.top >= 0 && box.bottom <= innerHeight && box.height > 10;
                                """, part), part + " is in sight amid the page, " + width + " wide");
            }
        }
        browser.width(1280, 800);
        browser.one("#said a[href='#assumptions-title']").click();
        browser.waitUntil("the assumptions are led to and not covered", () -> (Boolean) browser.js("""
                        const title = document.getElementById('assumptions-title').getBoundingClientRect();
                        const price = document.getElementById('price').getBoundingClientRect();
                        return title.top >= price.bottom && title.bottom < innerHeight;
                        """));
    }

    private long scrolled() {
        return ((Number) browser.js("return Math.round(scrollY)")).longValue();
    }

    private void goTo(String part) {
        browser.one("nav a[href='#" + part + "']").click();
        browser.waitUntil(part + " is shown", () -> browser.one("#view-" + part).isDisplayed());
    }

    @Test
    void eachPartIsFoundWhereItWasLeft() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.one("#gas-picture table");
        browser.waitUntilDrawn();
        browser.js("scrollTo(0, 900)");
        goTo("set-ups");
        browser.one("#payback-picture canvas");
        assertEquals(0, scrolled(), "what was never seen is seen from its top");
        browser.js("scrollTo(0, 400)");
        goTo("frame");
        assertEquals(900, scrolled());
        goTo("quotes");
        browser.waitUntil("the quotes begin at their top", () -> scrolled() == 0);
        goTo("set-ups");
        browser.waitUntil("the set-ups are where they were left", () -> scrolled() == 400);
        browser.js("scrollTo(0, 0)");
        browser.one("#set-up-cards a[href='#gas-picture']").click();
        browser.waitUntil("a picture is led to from another part", () -> (Boolean) browser.js("""
                        const box = document.getElementById('gas-picture').getBoundingClientRect();
                        return box.height > 0 && box.top >= 0 && box.top < innerHeight / 2;
                        """));
    }

    @Test
    void whatIsSaidOfAFieldMovesNothing() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.js("document.querySelectorAll('.setting').forEach((one) => one.open = true)");
        browser.waitUntilDrawn();
        String places = """
                return [...document.querySelectorAll('#settings input, #settings select')].filter((one) => one.checkVisibility())
                  .map((one) => Math.round(one.getBoundingClientRect().top + scrollY)).join(' ');
                """;
        Object before = browser.js(places);
        browser.js("document.querySelector('#settings [data-path=\"gas.hose.length\"]').focus()");
        browser.waitForText("#settings", "Hose length: Length. Left out: 25 ft. 4 in to 650 ft");
        assertEquals(before, browser.js(places), "when it is explained");
        browser.one("#settings [data-path='gas.hose.length']").sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE);
        browser.waitForText("#settings", "assumed 300 in");
        assertEquals(before, browser.js(places), "when it is assumed");
    }

    @Test
    void thePageLoadsItsOwnFilesAlone() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.open("#set-ups");
        browser.one("#compared table");
        assertEquals(List.of(), browser.js("""
                        return performance.getEntriesByType('resource').map((one) => one.name)
                          .filter((name) => !name.startsWith(location.origin + '/') && !name.startsWith('data:'));
                        """));
        assertEquals(List.of(), browser.complaints());
    }

    @Test
    void firstPaintIsLight() {
        long bytes = ((Number) browser.js("""
                        return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
                          .reduce((sum, one) => sum + one.encodedBodySize, 0);
                        """)).longValue();
        assertTrue(bytes > 10_000, "what was loaded is counted: " + bytes);
        assertTrue(bytes < 150_000, bytes + " bytes");
    }
}
