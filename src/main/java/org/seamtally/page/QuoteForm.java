package org.seamtally.page;

import java.util.Arrays;
import java.util.Optional;

/** Whom a printed quote is for. */
public enum QuoteForm {
    /** For the customer: work, material, price, what was assumed. */
    CUSTOMER("customer"),
    /** For the shop floor: what to set at each joint, and no money. */
    SHOP_FLOOR("shop-floor");

    private final String word;

    QuoteForm(String word) {
        this.word = word;
    }

    /** The word that requests use. */
    public String word() {
        return word;
    }

    /** The form that a word names; empty where there is none. */
    public static Optional<QuoteForm> of(String word) {
        return Arrays.stream(values()).filter(form -> form.word.equals(word)).findFirst();
    }
}
