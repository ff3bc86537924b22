package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** A quote is saved, found, revised, compared and printed in a real browser. */
@QuarkusTest
class QuotesBrowserTest {

    @TestHTTPResource("/")
    URL page;

    private static void save(Browser browser, String how) {
        browser.one("#save-quote").click();
        browser.one("form.save");
        if (how.equals("new")) {
            browser.one("#save-reference").sendKeys("Inquiry 77, yard gate");
            browser.one("#save-notes").sendKeys("Tubes come coped.");
        }
        browser.one("form.save button[value=" + how + "]").click();
    }

    @Test
    void aQuoteIsSavedRevisedComparedAndPrinted() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            save(browser, "new");
            browser.waitForText("#save-place", "revision 1");
            browser.one("#save-place a[href*='units=us']");
            browser.js("document.querySelector('input[name=units][value=si]').click()");
            browser.one("#save-place a[href*='units=si']");
            assertFalse(browser.text("#save-place").contains("changed since"), "other units are no other frame");
            String first = browser.text("#price .total .amount");
            browser.cell(1, "branch outside diameter").click();
            browser.type("1.25 in", Keys.ENTER);
            browser.waitUntil(
                    "the price moves",
                    () -> !browser.text("#price .total .amount").equals(first));
            browser.waitForText("#save-place", "changed since");
            save(browser, "revise");
            browser.waitForText("#save-place", "revision 2");
            assertFalse(browser.text("#save-place").contains("changed since"), "what stands there is what was saved");
            browser.one("#save-place a").click();
            browser.waitForText("#quote-in-hand", "revision 2: Two-seat trail buggy, rear bay");
            browser.waitForText("#quote-in-hand", "Inquiry 77, yard gate");
            browser.one("#quote-in-hand form button").click();
            browser.waitForText("#quote-in-hand .difference", "R1: branch outside diameter");
            browser.waitForText("#quote-in-hand .difference", "The work moved it by");
            browser.picture("quote-compared");
            assertEquals(List.of(), browser.accessibilityFaults());

            browser.one("#search").sendKeys("yard gate");
            browser.waitUntil(
                    "the quote is found",
                    () -> browser.all("#quote-list tbody tr").size() == 1);
            browser.one("#search").sendKeys(" of another town");
            browser.waitForText("#quote-list", "No quote is kept");

            String href = browser.one("#quote-in-hand a[href*='form=customer'][href*='format=pdf']")
                    .getDomAttribute("href");
            String type = String.valueOf(browser.js("""
                    const request = new XMLHttpRequest();
                    request.open('GET', arguments[0], false);
                    request.send();
                    return request.status + ' ' + request.getResponseHeader('Content-Type') + ' ' + request.responseText.slice(0, 5);
                    """, href));
            assertEquals("200 application/pdf %PDF-", type);

            browser.one("#quote-in-hand button.main").click();
            browser.waitUntil(
                    "the frame is in hand again",
                    () -> browser.cell(1, "branch outside diameter").getText().equals("1.25 in"));
            browser.one("#save-quote").click();
            assertTrue(
                    browser.one("form.save button[value=revise]").getText().contains("revision 3"),
                    "it is revised from where it stands");
            assertEquals("Inquiry 77, yard gate", browser.one("#save-reference").getDomProperty("value"));
            assertEquals(List.of(), browser.complaints("status of 422"));
        }
    }

    @Test
    void pricesAreKeptInABookAndTakenFromIt() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.js("document.querySelector('#price-book').closest('details').open = true");
            keep(browser, "Yard prices");
            browser.waitForText(".price-books", "Kept as version 1 of Yard prices");
            browser.waitForText(".price-books", "Version 1, used from ");
            var labour = browser.one("[data-path='prices.labour']");
            labour.sendKeys(Keys.chord(Keys.CONTROL, "a"), "50/h", Keys.TAB);
            browser.waitForText(".price-books", "No longer as in version 1");
            // in the line of the price, once the answer to the last key is there
            browser.waitForText("#price-body", "50/h");
            String cheap = browser.text("#price .total .amount");
            keep(browser, "Yard prices");
            browser.waitForText(".price-books", "Kept as version 2 of Yard prices");
            browser.picture("price-book");
            assertEquals(List.of(), browser.accessibilityFaults());

            // another frame, its own prices, and then the book's
            browser.startFrom("garden-cart-trailer.json");
            browser.js("document.querySelector('#price-book').closest('details').open = true");
            browser.waitForText(".price-books", "A quote takes what stands here");
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.js("document.querySelector('#price-book').closest('details').open = true");
            browser.waitUntil(
                    "the book is offered", () -> browser.text("#price-book").contains("Yard prices"));
            browser.js("""
                    const books = document.getElementById('price-book');
                    books.value = 'Yard prices';
                    books.dispatchEvent(new Event('change'));
                    """);
            browser.waitUntil(
                    "its prices are taken",
                    () -> browser.text("#price .total .amount").equals(cheap));
            assertEquals("50/h", browser.one("[data-path='prices.labour']").getDomProperty("value"));
            browser.js("scrollTo(0, 0)");
            save(browser, "new");
            browser.waitForText("#save-place", "revision 1");
            browser.one("#save-place a").click();
            browser.waitForText("#quote-in-hand", "priced by Yard prices, version 2");
            browser.one("#quote-in-hand button.main").click();
            browser.waitUntil(
                    "a quote by a book is opened with the book's prices",
                    () -> browser.text("#price .total .amount").equals(cheap));
            browser.one("#save-quote").click();
            assertEquals("Yard prices", browser.one("#save-book").getDomProperty("value"));
            assertEquals("Inquiry 77, yard gate", browser.one("#save-reference").getDomProperty("value"));
            assertEquals(List.of(), browser.complaints());
        }
    }

    private static void keep(Browser browser, String name) {
        browser.all(".price-books .tools button").get(0).click();
        var field = browser.one("#book-name");
        field.sendKeys(Keys.chord(Keys.CONTROL, "a"), name);
        browser.one(".price-books form button.main").click();
    }

    @Test
    void aFrameWithoutPricesIsNoQuote() {
        try (Browser browser = Browser.on(page)) {
            browser.cell(1, "kind").click();
            browser.type("plug", Keys.TAB);
            browser.cell(1, "hole diameter").click();
            browser.type("9 mm", Keys.TAB, "3 mm", Keys.TAB);
            save(browser, "new");
            browser.waitForText("#save-place [role=alert]", "a quote has a price");
            assertEquals(List.of(), browser.complaints("status of 422"));
        }
    }
}
