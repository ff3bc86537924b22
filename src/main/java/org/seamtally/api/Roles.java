package org.seamtally.api;

import java.util.Set;

/** What a token may say of its bearer. Which endpoint takes which stands on the endpoint; {@code docs/access.md} has the table. */
final class Roles {

    /** Works frames out, makes and revises quotes, sends job files; reads the shop's prices. */
    static final String ESTIMATOR = "estimator";

    /** Makes versions of price books; works frames out to see what they do, and reads quotes. */
    static final String PRICE_KEEPER = "price-keeper";

    /** Reads what the shop keeps. */
    static final String READER = "reader";

    /** Other software: works frames out and sends job files; reads no quote and no price book. */
    static final String MACHINE = "machine";

    /** Looks after the service: metrics, whether the database can be reached, copies of it. Belongs to no shop. */
    static final String OPERATOR = "operator";

    /** All of them. */
    static final Set<String> ALL = Set.of(ESTIMATOR, PRICE_KEEPER, READER, MACHINE, OPERATOR);

    private Roles() {}
}
