package org.seamtally.quote;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every store of price books keeps to. */
public abstract class KeptPriceBooksContractTest {

    private static final Instant MADE = Instant.parse("2031-03-04T05:06:07.123456Z");
    private static final LocalDate MARCH = LocalDate.of(2031, 3, 1);

    private final String shop = "shop-" + UUID.randomUUID();
    private KeptPriceBooks books;

    /** The store. */
    protected abstract KeptPriceBooks books();

    @BeforeEach
    void open() {
        books = books();
    }

    private static PriceBookVersion version(String name, int number, LocalDate effective) {
        byte[] prices = ("{\"currency\":\"USD\",\"labour\":\"" + number + ".50/h\"}").getBytes(StandardCharsets.UTF_8);
        return new PriceBookVersion(
                new PriceBookName(name), number, effective, Optional.of("höher: 5 %"), prices, MADE);
    }

    @Test
    void aVersionComesBackAsItWasAdded() {
        PriceBookVersion added = version("Märzpreise 2031", 1, MARCH);
        assertTrue(books.add(shop, added));
        PriceBook book = books.find(shop, new PriceBookName("Märzpreise 2031")).orElseThrow();
        PriceBookVersion found = book.latest();
        assertEquals(added.book(), found.book());
        assertEquals(1, found.number());
        assertEquals(MARCH, found.effective());
        assertEquals(added.note(), found.note());
        assertEquals(MADE, found.made());
        assertArrayEquals(added.prices(), found.prices());
    }

    @Test
    void onlyTheNextVersionIsAdded() {
        assertFalse(books.add(shop, version("shop", 2, MARCH)));
        assertEquals(Optional.empty(), books.find(shop, new PriceBookName("shop")));
        assertTrue(books.add(shop, version("shop", 1, MARCH)));
        assertFalse(books.add(shop, version("shop", 1, MARCH.plusDays(1))));
        assertFalse(books.add(shop, version("shop", 3, MARCH)));
        assertTrue(books.add(shop, version("shop", 2, MARCH.plusDays(2))));
        PriceBook book = books.find(shop, new PriceBookName("shop")).orElseThrow();
        assertEquals(
                List.of(MARCH, MARCH.plusDays(2)),
                book.versions().stream().map(PriceBookVersion::effective).toList());
    }

    @Test
    void aBookIsOneShopsAndNamesAreWrittenExactly() {
        assertTrue(books.add(shop, version("shop", 1, MARCH)));
        assertEquals(Optional.empty(), books.find("other-" + shop, new PriceBookName("shop")));
        assertEquals(Optional.empty(), books.find(shop, new PriceBookName("Shop")));
        assertTrue(books.add(shop, version("Shop", 1, MARCH)));
        assertTrue(books.add("other-" + shop, version("shop", 1, MARCH)));
    }

    @Test
    void booksAreListedByNameAStretchAtATime() {
        for (String name : List.of("b", "a", "Z", "ä", "10", "c d")) {
            assertTrue(books.add(shop, version(name, 1, MARCH)));
        }
        assertTrue(books.add(shop, version("c d", 2, MARCH)));
        assertTrue(books.add("other-" + shop, version("bb", 1, MARCH)));
        // by the numbers of their letters, in every store alike
        assertEquals(List.of("10", "Z", "a", "b", "c d", "ä"), names(books.list(shop, 10, null)));
        assertEquals(List.of("10", "Z"), names(books.list(shop, 2, null)));
        assertEquals(List.of("a", "b"), names(books.list(shop, 2, new PriceBookName("Z"))));
        assertEquals(List.of("c d", "ä"), names(books.list(shop, 2, new PriceBookName("bb"))));
        assertEquals(
                2, books.list(shop, 10, new PriceBookName("b")).get(0).latest().number());
        assertEquals(List.of(), books.list(shop, 10, new PriceBookName("ä")));
    }

    private static List<String> names(List<PriceBook> found) {
        return found.stream().map(book -> book.name().text()).toList();
    }

    @Test
    void ofManyWhoAddTheSameVersionAtOnceOneDoes() throws Exception {
        int many = 4;
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            CyclicBarrier together = new CyclicBarrier(many);
            Callable<Boolean> adding = () -> {
                together.await();
                return books.add(shop, version("shop", 1, MARCH));
            };
            List<Future<Boolean>> all = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                all.add(threads.submit(adding));
            }
            int added = 0;
            for (Future<Boolean> one : all) {
                added += one.get() ? 1 : 0;
            }
            assertEquals(1, added);
        } finally {
            threads.shutdownNow();
        }
    }
}
