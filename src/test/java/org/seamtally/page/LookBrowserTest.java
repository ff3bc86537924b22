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
    void cautionsAndAssumptionsAreAlwaysInSight() {
        browser.startFrom("trail-buggy-rear-bay.json");
        browser.waitForText("#cautions", "No load was considered");
        for (String part : List.of("#cautions", "#assumptions", "#price .total")) {
            assertTrue((Boolean) browser.js("""
                            window.scrollTo(0, document.documentElement.scrollHeight / 2);
                            const box = document.querySelector(arguments[0]).getBoundingClientRect();
                            return box.top >= 0 && box.top + 40 < innerHeight && box.height > 30;
                            """, part), part + " is in sight halfway down the page");
        }
        browser.width(375, 800);
        assertTrue(browser.one("#cautions").isDisplayed(), "below the work on a narrow screen");
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
