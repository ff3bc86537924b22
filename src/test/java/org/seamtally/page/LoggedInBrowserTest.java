package org.seamtally.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.net.URL;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamtally.api.ProviderStub;

/** Where people log in, a real browser is sent to the provider and back, and the page brings its token on each write. */
@QuarkusTest
@TestProfile(LoggedInBrowserTest.LogIn.class)
class LoggedInBrowserTest {

    public static final class LogIn implements QuarkusTestProfile {

        @Override
        public List<TestResourceEntry> testResources() {
            return List.of(new TestResourceEntry(ProviderStub.class));
        }
    }

    private static final String WRITE = """
            const request = new XMLHttpRequest();
            request.open('POST', '/v1/frame-estimates', false);
            request.setRequestHeader('Content-Type', 'application/json');
            if (arguments[0]) {
              request.setRequestHeader('X-CSRF-Token', document.cookie.match(/csrf-token=([^;]+)/)[1]);
            }
            request.send('{"frame": {"joints": [{"kind": "plug", "holeDiameter": "9 mm", "depth": "2 mm"}]}}');
            return request.status;
            """;

    @TestHTTPResource("/")
    URL page;

    @Test
    void aFrameIsPricedAndAQuoteSavedAsOneWhoLoggedIn() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.one("#save-quote").click();
            browser.one("form.save");
            browser.one("#save-reference").sendKeys("Inquiry 78");
            browser.one("form.save button[value=new]").click();
            browser.waitForText("#save-place", "revision 1");
            assertEquals(List.of(), browser.complaints());
            // the same session without that token is not the page
            assertEquals(403L, browser.js(WRITE, false));
            assertEquals(200L, browser.js(WRITE, true));
            browser.complaints();
        }
    }

    @Test
    void thePrintedQuoteHasAButtonThatPrints() {
        try (Browser browser = Browser.on(page)) {
            browser.startFrom("trail-buggy-rear-bay.json");
            browser.one("#save-quote").click();
            browser.one("form.save button[value=new]").click();
            browser.waitForText("#save-place", "revision 1");
            browser.visit(browser.one("#save-place a[href*='form=customer'][href*='format=html']")
                    .getDomAttribute("href"));
            assertEquals(true, browser.one(".press button").isDisplayed());
            assertEquals("pressed", browser.js("""
                            let printed = 'not pressed';
                            window.print = () => { printed = 'pressed'; };
                            document.querySelector('.press button').click();
                            return printed;
                            """));
            browser.picture("printed-quote");
            assertEquals(List.of(), browser.complaints());
        }
    }
}
