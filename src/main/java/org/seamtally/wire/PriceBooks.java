package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.PriceBookVersion;

/** Price books: versions are added, and read. Every method may throw {@link UnavailableException}. */
public final class PriceBooks {

    private final KeptPriceBooks kept;
    private final InstantSource clock;

    /** @param clock tells which day it is, in UTC */
    public PriceBooks(KeptPriceBooks kept, InstantSource clock) {
        this.kept = kept;
        this.clock = clock;
    }

    /** What came of a version that was to be kept. */
    public sealed interface Added {

        /** It is kept. */
        record Version(PriceBookVersionAnswer answer) implements Added {}

        /**
         * The book has another latest version than was expected.
         *
         * @param latest 0 where there is no such book
         */
        record Stale(int latest) implements Added {}
    }

    /**
     * Adds a version from a {@link PriceBookRequest}.
     *
     * @param expected which number the latest version may have, 0 where there is no such book
     * @throws RefusedException where the body is not what is taken
     */
    public Added add(String shop, PriceBookName name, InputStream body, IntPredicate expected)
            throws IOException, RefusedException {
        byte[] sent = body.readAllBytes();
        PriceBookRequest request = RequestReader.read(new ByteArrayInputStream(sent), PriceBookRequest.class);
        Optional<PriceBookVersion> before = kept.find(shop, name).map(PriceBook::latest);
        int latest = before.map(PriceBookVersion::number).orElse(0);
        if (!expected.test(latest)) {
            return new Added.Stale(latest);
        }
        PriceBookVersion version = new PriceBookVersion(
                name,
                latest + 1,
                Read.tryDate(request.effective()),
                Read.maybe(Read.text(request.note())),
                Json.compact(sent, "prices"),
                notBefore(before.map(PriceBookVersion::made), now()));
        return kept.add(shop, version)
                ? new Added.Version(PriceBookVersionAnswer.of(version))
                : new Added.Stale(latest + 1);
    }

    /** A book with the version that quotes of today take. */
    public Optional<PriceBookAnswer> find(String shop, PriceBookName name) {
        return kept.find(shop, name).map(book -> PriceBookAnswer.of(book, today()));
    }

    /** One version of a book. */
    public Optional<PriceBookVersionAnswer> version(String shop, PriceBookName name, int number) {
        return kept.find(shop, name).flatMap(book -> book.version(number)).map(PriceBookVersionAnswer::of);
    }

    /** Books in the order of their names, after the given one where it is not null. */
    public PriceBookList list(String shop, int limit, PriceBookName after) {
        // one more tells whether there are more
        List<PriceBook> found = kept.list(shop, limit + 1, after);
        List<PriceBook> stretch = found.subList(0, Math.min(limit, found.size()));
        return new PriceBookList(
                stretch.stream()
                        .map(book -> PriceBookList.Item.of(book, today()))
                        .toList(),
                found.size() > limit ? stretch.get(limit - 1).name().text() : null);
    }

    private Instant now() {
        // databases keep microseconds: what is answered now is what is answered later
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
    }

    /** When a thing is made that follows another: in their order, even where two replicas differ by a little. */
    static Instant notBefore(Optional<Instant> earlier, Instant now) {
        return earlier.filter(now::isBefore).orElse(now);
    }
}
