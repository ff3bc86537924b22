package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job file is handed in, watched, and its results and refusals are read, in a real browser. */
@QuarkusTest
class BatchesBrowserTest {

    private static final String PLUG =
            "{\"frame\":{\"joints\":[{\"kind\":\"plug\",\"holeDiameter\":\"%s\",\"depth\":\"3 mm\"}]}}";

    @TestHTTPResource("/")
    URL page;

    @TempDir
    Path files;

    private Path jobs(int frames, int refusedEach) throws IOException {
        StringBuilder lines = new StringBuilder();
        for (int i = 1; i <= frames; i++) {
            lines.append(PLUG.formatted(i % refusedEach == 0 ? "9 psi" : "9 mm"))
                    .append('\n');
        }
        return Files.writeString(files.resolve("orders.ndjson"), lines);
    }

    @Test
    void aJobFileIsWorkedThrough() throws IOException {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.open("#batches");
            browser.one("#job-file").sendKeys(jobs(40, 10).toString());
            browser.waitForText("#batch-list li", "40 of 40 frames, 4 refused");
            browser.waitForText("#batch-list li .state", "done");
            browser.waitForText("#batch-list li", "orders.ndjson");
            assertEquals(
                    1.0, ((Number) browser.js("return document.querySelector('progress').position")).doubleValue());
            browser.one("#batch-list li button[aria-expanded]").click();
            browser.waitForText("#batch-list .refusals", "line 10: joint 1, hole diameter");
            assertEquals(4, browser.all("#batch-list .refusals li").size());
            browser.waitForText("#batch-list .detail", "USD");
            browser.picture("batch-done");
            assertEquals(List.of(), browser.accessibilityFaults());
            String href = browser.one("#batch-list li a").getDomAttribute("href");
            String results = String.valueOf(browser.js("""
                    const request = new XMLHttpRequest();
                    request.open('GET', arguments[0], false);
                    request.send();
                    return request.responseText;
                    """, href));
            assertEquals(41, results.lines().count());
            assertTrue(results.contains("\"complete\":true"), results.substring(results.length() - 120));
            String own = "#batch-list li[data-batch='"
                    + browser.one("#batch-list li").getAttribute("data-batch") + "']";
            browser.all(own + " .tools button").get(2).click();
            browser.waitUntil("the batch is removed", () -> browser.all(own).isEmpty());
            assertEquals(List.of(), browser.complaints());
        }
    }

    @Test
    void aFileOfNothingIsRefusedInPlainWords() throws IOException {
        try (Browser browser = Browser.on(page)) {
            browser.open("#batches");
            browser.one("#job-file")
                    .sendKeys(
                            Files.writeString(files.resolve("empty.ndjson"), "").toString());
            browser.waitForText("#batch-problem", "Not taken");
            assertEquals(List.of(), browser.complaints("status of 4"));
        }
    }
}
