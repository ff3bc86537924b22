package org.seamtally.quote;

import java.util.List;
import java.util.Optional;
import org.seamtally.kept.UnavailableException;

/**
 * Where price books are kept. Every call is one transaction. What is another shop's does not exist.
 *
 * <p>Each method throws {@link UnavailableException} where what is kept cannot be reached.
 */
public interface KeptPriceBooks {

    /**
     * Adds a version. The first makes the book.
     *
     * @return false where its number is not the next one: another was made meanwhile; nothing was kept
     */
    boolean add(String shop, PriceBookVersion version);

    /** A book with all its versions. */
    Optional<PriceBook> find(String shop, PriceBookName name);

    /**
     * Books in the order of their names.
     *
     * @param after only those that come after this name; null for all
     */
    List<PriceBook> list(String shop, int limit, PriceBookName after);
}
