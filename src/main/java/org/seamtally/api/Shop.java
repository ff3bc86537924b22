package org.seamtally.api;

/** The shop that what is kept belongs to. */
final class Shop {

    /** The one there is as long as the service is open and asks nobody who he is. */
    static final String LOCAL = "local";

    private Shop() {}
}
