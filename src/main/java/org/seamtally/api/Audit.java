package org.seamtally.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.jboss.logging.Logger;
import org.seamtally.quote.PriceBookName;
import org.seamtally.wire.Json;

/**
 * A line of the log for each change of a price book or a quote, once it is kept: who made it, of which shop, and what. Lines
 * have a category of their own, to be sent elsewhere, and the log says when.
 */
@ApplicationScoped
public class Audit {

    /** The category. */
    static final String CATEGORY = "org.seamtally.audit";

    private static final Logger LOG = Logger.getLogger(CATEGORY);

    private final SecurityIdentity asking;
    private final Shop shop;

    Audit(SecurityIdentity asking, Shop shop) {
        this.asking = asking;
        this.shop = shop;
    }

    /** A quote's revision was made. @param revision 1 for the quote itself */
    void quote(UUID quote, int revision) {
        changed("quote " + quote + " revision " + revision);
    }

    /** A price book's version was made. */
    void priceBook(PriceBookName book, int version) {
        changed("price book " + quoted(book.text()) + " version " + version);
    }

    private void changed(String what) {
        LOG.infof("%s by %s of %s", what, quoted(asking.getPrincipal().getName()), quoted(shop.name()));
    }

    /** With what could break a line, or pass for another, escaped: names come from elsewhere. */
    private static String quoted(String name) {
        try {
            return Json.mapper().writeValueAsString(name);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a text can always be written", e);
        }
    }
}
