package org.seamtally.quote;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.IdempotencyKeys.Claim;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;

/** What every store of quotes keeps to. */
public abstract class KeptQuotesContractTest {

    private static final Instant MADE = Instant.parse("2031-03-04T05:06:07.123456Z");

    private final String shop = "shop-" + UUID.randomUUID();
    private KeptQuotes quotes;

    /** The store. */
    protected abstract KeptQuotes quotes();

    /** Its keys. */
    protected abstract IdempotencyKeys keys();

    @BeforeEach
    void open() {
        quotes = quotes();
    }

    private static Revision revision(int number, String frame, String reference, String notes, String total) {
        return new Revision(
                new RevisionHead(
                        number,
                        MADE.plusSeconds(number),
                        new ComputedBy("1.2.3", "abc"),
                        new Terms(
                                Optional.ofNullable(reference),
                                Optional.of(LocalDate.of(2031, 4, 30)),
                                Optional.ofNullable(notes)),
                        number % 2 == 1
                                ? Optional.empty()
                                : Optional.of(new PricedBy(new PriceBookName("shop"), 3, LocalDate.of(2031, 1, 1))),
                        Optional.ofNullable(frame),
                        Money.parse(total)),
                ("{\"request\":" + number + "}").getBytes(StandardCharsets.UTF_8),
                ("{\"estimate\":\"ø " + number + "\"}").getBytes(StandardCharsets.UTF_8));
    }

    private UUID kept(String frame, String reference, String notes) {
        UUID id = UUID.randomUUID();
        quotes.create(
                shop, id, quotes.nextNumber(shop), MADE, revision(1, frame, reference, notes, "USD 100.00"), null);
        return id;
    }

    private void assertSame(Revision expected, Revision found) {
        assertEquals(expected.head(), found.head());
        assertArrayEquals(expected.request(), found.request());
        assertArrayEquals(expected.estimate(), found.estimate());
    }

    @Test
    void aQuoteComesBackAsItWasKeptWithAllItsRevisions() {
        UUID id = UUID.randomUUID();
        QuoteNumber number = quotes.nextNumber(shop);
        Revision first = revision(1, "Rear bay", "Inquiry 7", "line one\nline two", "JPY 12345");
        Revision second = revision(2, null, null, null, "BHD 0.125");
        quotes.create(shop, id, number, MADE, first, null);
        assertTrue(quotes.revise(shop, id, second, null));
        assertEquals(
                new Quote(id, number, MADE, List.of(first.head(), second.head())),
                quotes.find(shop, id).orElseThrow());
        assertSame(first, quotes.revision(shop, id, 1).orElseThrow());
        assertSame(second, quotes.revision(shop, id, 2).orElseThrow());
        assertEquals(Optional.empty(), quotes.revision(shop, id, 3));
        assertEquals(Optional.empty(), quotes.revision(shop, id, 0));
    }

    @Test
    void onlyTheNextRevisionIsAdded() {
        UUID id = kept("a", null, null);
        assertFalse(quotes.revise(shop, id, revision(1, "b", null, null, "USD 1.00"), null));
        assertFalse(quotes.revise(shop, id, revision(3, "b", null, null, "USD 1.00"), null));
        assertFalse(quotes.revise(shop, UUID.randomUUID(), revision(2, "b", null, null, "USD 1.00"), null));
        assertTrue(quotes.revise(shop, id, revision(2, "b", null, null, "USD 1.00"), null));
        assertFalse(quotes.revise(shop, id, revision(2, "c", null, null, "USD 1.00"), null));
        assertEquals(2, quotes.find(shop, id).orElseThrow().revisions().size());
        assertEquals("b", quotes.find(shop, id).orElseThrow().latest().frame().orElseThrow());
    }

    @Test
    void whatIsAnotherShopsIsNotThere() {
        UUID id = kept("a", null, null);
        String other = "other-" + shop;
        assertEquals(Optional.empty(), quotes.find(other, id));
        assertEquals(Optional.empty(), quotes.revision(other, id, 1));
        assertFalse(quotes.revise(other, id, revision(2, "b", null, null, "USD 1.00"), null));
        assertEquals(List.of(), quotes.list(other, null, 10, null));
        kept("b", null, null);
        assertEquals(List.of(), quotes.list(other, null, 10, id));
    }

    @Test
    void numbersRunWithinAShop() {
        assertEquals(1, quotes.nextNumber(shop).value());
        assertEquals(2, quotes.nextNumber(shop).value());
        assertEquals(1, quotes.nextNumber("other-" + shop).value());
        assertEquals(3, quotes.nextNumber(shop).value());
    }

    @Test
    void noTwoAtOnceGetTheSameNumber() throws Exception {
        int many = 4;
        int each = 10;
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            CyclicBarrier together = new CyclicBarrier(many);
            Callable<List<Long>> counting = () -> {
                together.await();
                List<Long> own = new ArrayList<>();
                for (int i = 0; i < each; i++) {
                    own.add(quotes.nextNumber(shop).value());
                }
                return own;
            };
            List<Future<List<Long>>> all = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                all.add(threads.submit(counting));
            }
            Set<Long> numbers = new HashSet<>();
            for (Future<List<Long>> one : all) {
                numbers.addAll(one.get());
            }
            assertEquals(many * each, numbers.size());
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void ofManyWhoReviseTheSameRevisionAtOnceOneDoes() throws Exception {
        UUID id = kept("a", null, null);
        int many = 4;
        ExecutorService threads = Executors.newFixedThreadPool(many);
        try {
            CyclicBarrier together = new CyclicBarrier(many);
            Callable<Boolean> revising = () -> {
                together.await();
                return quotes.revise(shop, id, revision(2, "b", null, null, "USD 1.00"), null);
            };
            List<Future<Boolean>> all = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                all.add(threads.submit(revising));
            }
            int revised = 0;
            for (Future<Boolean> one : all) {
                revised += one.get() ? 1 : 0;
            }
            assertEquals(1, revised);
            assertEquals(2, quotes.find(shop, id).orElseThrow().revisions().size());
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void quotesAreListedByNumberAStretchAtATime() {
        UUID first = kept("a", null, null);
        UUID second = kept("b", null, null);
        UUID third = kept("c", null, null);
        assertTrue(quotes.revise(shop, first, revision(2, "d", null, null, "USD 2.00"), null));
        assertEquals(List.of(third, second, first), ids(quotes.list(shop, null, 10, null)));
        assertEquals(List.of(third, second), ids(quotes.list(shop, null, 2, null)));
        assertEquals(List.of(first), ids(quotes.list(shop, null, 2, second)));
        assertEquals(List.of(), ids(quotes.list(shop, null, 2, first)));
        assertEquals(List.of(), ids(quotes.list(shop, null, 2, UUID.randomUUID())));
        Quote revised = quotes.list(shop, null, 1, second).get(0);
        assertEquals(1, revised.revisions().size());
        assertEquals(2, revised.latest().number());
        assertEquals("d", revised.latest().frame().orElseThrow());
        assertEquals(Money.parse("USD 2.00"), revised.latest().total());
    }

    @Test
    void moneyIsKeptToTheLastDecimalOfItsCurrency() {
        for (CurrencyUnit currency : CurrencyUnit.registeredCurrencies()) {
            UUID id = UUID.randomUUID();
            Money total = Money.ofMinor(currency, 1_234_567);
            quotes.create(
                    shop, id, quotes.nextNumber(shop), MADE, revision(1, "f", null, null, total.toString()), null);
            assertEquals(total, quotes.find(shop, id).orElseThrow().latest().total());
        }
    }

    private static List<UUID> ids(List<Quote> found) {
        return found.stream().map(Quote::id).toList();
    }

    private void assertFinds(List<UUID> expected, String search) {
        assertEquals(expected, ids(quotes.list(shop, search, 10, null)), search);
    }

    @Test
    void aSearchLooksThroughNumberFrameReferenceAndNotesOfTheLatestRevision() {
        UUID buggy = kept("Trail buggy, REAR bay", "Anfrage Ä-7", null);
        UUID cart = kept("Hand cart", "inquiry 50%_off!", "Tubes come\ncoped");
        assertFinds(List.of(buggy), "rear");
        assertFinds(List.of(buggy), "anfrage ä");
        assertFinds(List.of(buggy), "ANFRAGE Ä-7");
        assertFinds(List.of(cart), "COPED");
        assertFinds(List.of(buggy), "q-000001");
        assertFinds(List.of(cart), "000002");
        assertFinds(List.of(cart, buggy), "r");
        assertFinds(List.of(), "sidecar");
        assertFinds(List.of(cart), "50%_off!");
        assertFinds(List.of(cart), "%");
        assertFinds(List.of(cart), "_");
        assertFinds(List.of(cart), "!");
        assertFinds(List.of(), "a%y");
        assertFinds(List.of(), "\\");
        assertTrue(quotes.revise(shop, cart, revision(2, "Trolley", null, null, "USD 1.00"), null));
        assertFinds(List.of(), "cart");
        assertFinds(List.of(cart), "trolley");
        assertEquals(List.of(buggy), ids(quotes.list(shop, "r", 10, cart)));
        assertEquals(List.of(cart), ids(quotes.list(shop, "r", 1, null)));
    }

    private Claim claim(IdempotencyKeys keys, String key) {
        return keys.claim(new KeyHolder(shop, "quotes", key, UUID.randomUUID()), MADE);
    }

    @Test
    void aKeyIsSettledWithWhatIsKept() {
        IdempotencyKeys keys = keys();
        claim(keys, "k");
        SettledKey use = new SettledKey(shop, "quotes", "k", "d1", new byte[] {1, 2});
        UUID id = UUID.randomUUID();
        quotes.create(shop, id, quotes.nextNumber(shop), MADE, revision(1, "a", null, null, "USD 1.00"), use);
        Claim.Settled settled = assertInstanceOf(Claim.Settled.class, claim(keys, "k"));
        assertArrayEquals(new byte[] {1, 2}, settled.use().answer());
        assertEquals("d1", settled.use().digest());

        SettledKey other = new SettledKey(shop, "quotes", "k2", "d2", new byte[] {3});
        assertFalse(quotes.revise(shop, id, revision(3, "b", null, null, "USD 1.00"), other));
        assertInstanceOf(Claim.Granted.class, claim(keys, "k2"), "nothing kept, nothing settled");
        assertTrue(quotes.revise(shop, id, revision(2, "b", null, null, "USD 1.00"), other));
        assertInstanceOf(Claim.Settled.class, claim(keys, "k2"));
    }

    @Test
    void whereAKeyWasSettledMeanwhileNothingIsKept() {
        SettledKey use = new SettledKey(shop, "quotes", "k", "d", new byte[] {1});
        UUID id = UUID.randomUUID();
        quotes.create(shop, id, quotes.nextNumber(shop), MADE, revision(1, "a", null, null, "USD 1.00"), use);
        UUID late = UUID.randomUUID();
        assertThrows(
                KeyTakenException.class,
                () -> quotes.create(
                        shop, late, quotes.nextNumber(shop), MADE, revision(1, "b", null, null, "USD 1.00"), use));
        assertEquals(Optional.empty(), quotes.find(shop, late));
        assertThrows(
                KeyTakenException.class, () -> quotes.revise(shop, id, revision(2, "b", null, null, "USD 1.00"), use));
        assertEquals(1, quotes.find(shop, id).orElseThrow().revisions().size());
    }
}
