package org.seamtally.quote;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.seamtally.batch.MemoryStore;
import org.seamtally.kept.SettledKey;

/** Quotes and price books in memory, for tests. */
public final class MemoryQuotes implements KeptQuotes, KeptPriceBooks {

    private record BookId(String shop, PriceBookName name) {}

    private static final class Entry {
        final String shop;
        final UUID id;
        final QuoteNumber number;
        final Instant created;
        final List<Revision> revisions = new ArrayList<>();

        Entry(String shop, UUID id, QuoteNumber number, Instant created) {
            this.shop = shop;
            this.id = id;
            this.number = number;
            this.created = created;
        }

        Quote quote() {
            return new Quote(
                    id, number, created, revisions.stream().map(Revision::head).toList());
        }

        Revision latest() {
            return revisions.get(revisions.size() - 1);
        }
    }

    private final MemoryStore keys;
    private final Map<BookId, List<PriceBookVersion>> books =
            new TreeMap<>(Comparator.comparing(BookId::shop).thenComparing(BookId::name));
    private final List<Entry> quotes = new ArrayList<>();
    private final Map<String, Long> numbers = new TreeMap<>();

    /** @param keys what settles the keys */
    public MemoryQuotes(MemoryStore keys) {
        this.keys = keys;
    }

    @Override
    public synchronized boolean add(String shop, PriceBookVersion version) {
        List<PriceBookVersion> versions =
                books.computeIfAbsent(new BookId(shop, version.book()), id -> new ArrayList<>());
        return versions.size() == version.number() - 1 && versions.add(version);
    }

    @Override
    public synchronized Optional<PriceBook> find(String shop, PriceBookName name) {
        return list(shop, Integer.MAX_VALUE, null).stream()
                .filter(book -> book.name().equals(name))
                .findFirst();
    }

    @Override
    public synchronized List<PriceBook> list(String shop, int limit, PriceBookName after) {
        return books.entrySet().stream()
                .filter(book ->
                        book.getKey().shop.equals(shop) && !book.getValue().isEmpty())
                .filter(book -> after == null || book.getKey().name.compareTo(after) > 0)
                .map(book -> new PriceBook(book.getKey().name, book.getValue()))
                .limit(limit)
                .toList();
    }

    @Override
    public synchronized QuoteNumber nextNumber(String shop) {
        return new QuoteNumber(numbers.merge(shop, 1L, Long::sum));
    }

    @Override
    public synchronized void create(
            String shop, UUID id, QuoteNumber number, Instant created, Revision first, SettledKey key) {
        keys.settle(key, first.head().made());
        Entry entry = new Entry(shop, id, number, created);
        entry.revisions.add(first);
        quotes.add(entry);
    }

    @Override
    public synchronized boolean revise(String shop, UUID id, Revision next, SettledKey key) {
        Optional<Entry> entry = entry(shop, id)
                .filter(found -> found.latest().head().number() == next.head().number() - 1);
        entry.ifPresent(found -> {
            keys.settle(key, next.head().made());
            found.revisions.add(next);
        });
        return entry.isPresent();
    }

    @Override
    public synchronized Optional<Quote> find(String shop, UUID id) {
        return entry(shop, id).map(Entry::quote);
    }

    @Override
    public synchronized Optional<Revision> revision(String shop, UUID id, int number) {
        return entry(shop, id)
                .flatMap(entry -> entry.revisions.stream()
                        .filter(revision -> revision.head().number() == number)
                        .findFirst());
    }

    @Override
    public synchronized List<Quote> list(String shop, String search, int limit, UUID after) {
        long before = after == null
                ? Long.MAX_VALUE
                : entry(shop, after).map(entry -> entry.number.value()).orElse(0L);
        return quotes.stream()
                .filter(entry -> entry.shop.equals(shop) && entry.number.value() < before)
                .filter(entry -> search == null
                        || entry.latest().head().searched(entry.number).contains(RevisionHead.folded(search)))
                .sorted(Comparator.comparing(entry -> -entry.number.value()))
                .limit(limit)
                .map(entry -> new Quote(
                        entry.id,
                        entry.number,
                        entry.created,
                        List.of(entry.latest().head())))
                .toList();
    }

    private Optional<Entry> entry(String shop, UUID id) {
        return quotes.stream()
                .filter(entry -> entry.shop.equals(shop) && entry.id.equals(id))
                .findFirst();
    }
}
