package org.seamtally.quote;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;

/**
 * Where quotes are kept. Every call is one transaction. What is another shop's does not exist. Nothing that is kept is
 * changed: a revision is added, and stays.
 *
 * <p>Each method throws {@link UnavailableException} where what is kept cannot be reached.
 */
public interface KeptQuotes {

    /** A number that no quote of the shop has had. One that is not used is a gap. */
    QuoteNumber nextNumber(String shop);

    /**
     * Keeps a new quote.
     *
     * @param first revision 1
     * @param key settled in the same transaction; null where none was sent
     * @throws KeyTakenException where another request settled the key since it was claimed: nothing was kept
     */
    void create(String shop, UUID id, QuoteNumber number, Instant created, Revision first, SettledKey key);

    /**
     * Keeps a further revision.
     *
     * @param next with the number after that of the revision it was made from
     * @param key settled in the same transaction; null where none was sent
     * @return false where there is no such quote, or the revision it was made from is not its latest: nothing was kept
     * @throws KeyTakenException where another request settled the key since it was claimed: nothing was kept
     */
    boolean revise(String shop, UUID id, Revision next, SettledKey key);

    /** A quote with what is known of its revisions. */
    Optional<Quote> find(String shop, UUID id);

    /** A revision with its texts. */
    Optional<Revision> revision(String shop, UUID id, int number);

    /**
     * Quotes with their latest revision alone, the highest number first.
     *
     * @param search only those whose latest revision has this text in it, see {@link RevisionHead#searched}; null for all
     * @param after only those that come after this quote; null for all. None after one that is not there
     */
    List<Quote> list(String shop, String search, int limit, UUID after);
}
