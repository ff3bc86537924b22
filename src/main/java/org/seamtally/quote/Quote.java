package org.seamtally.quote;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * A quote and its revisions.
 *
 * @param created when it was first made
 * @param revisions at least one, in the order of their numbers
 */
public record Quote(UUID id, QuoteNumber number, Instant created, List<RevisionHead> revisions) {

    /** @throws IllegalArgumentException where there is no revision */
    public Quote {
        revisions = List.copyOf(revisions);
        if (revisions.isEmpty()) {
            throw new IllegalArgumentException("a quote has at least one revision");
        }
    }

    /** The same quote with a further revision. */
    public Quote with(RevisionHead next) {
        return new Quote(
                id,
                number,
                created,
                Stream.concat(revisions.stream(), Stream.of(next)).toList());
    }

    /** The revision that stands. */
    public RevisionHead latest() {
        return revisions.get(revisions.size() - 1);
    }

    /** A revision by its number. */
    public Optional<RevisionHead> revision(int number) {
        return revisions.stream().filter(head -> head.number() == number).findFirst();
    }
}
