package org.seamtally.wire;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.seamtally.quote.PriceBookName;

/** Where what is kept is to be found: references relative to the service. */
public final class Hrefs {

    private Hrefs() {}

    /** A quote. */
    public static String quote(UUID id) {
        return "/v1/quotes/" + id;
    }

    /** A revision of a quote. */
    public static String revision(UUID id, int number) {
        return quote(id) + "/revisions/" + number;
    }

    /** A price book. */
    public static String priceBook(PriceBookName name) {
        // a form's encoding but for the blank; a name has no other character that differs
        return "/v1/price-books/"
                + URLEncoder.encode(name.text(), StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** A version of a price book. */
    public static String priceBookVersion(PriceBookName name, int number) {
        return priceBook(name) + "/versions/" + number;
    }
}
