package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.IdempotencyKeys.Claim;

/** What every store of keys keeps to; how a key is settled is in {@link KeptBatchesContractTest}. */
public abstract class IdempotencyKeysContractTest {

    private static final Instant NOW = Instant.parse("2031-03-04T05:06:07.089Z");
    private static final long LEASE = IdempotencyKeys.LEASE_SECONDS;
    private static final Claim GRANTED = new Claim.Granted();
    private static final Claim IN_FLIGHT = new Claim.InFlight();

    private final String shop = "shop-" + UUID.randomUUID();
    private IdempotencyKeys keys;

    /** The store. */
    protected abstract IdempotencyKeys keys();

    @BeforeEach
    void open() {
        keys = keys();
    }

    @Test
    void aKeyIsClaimedOnceUntilItIsReleased() {
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW));
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", "k", NOW));
        keys.release(shop, "door", "k");
        keys.release(shop, "door", "k");
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW));
    }

    @Test
    void aKeyIsOneShopsAtOneEndpoint() {
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW));
        assertEquals(GRANTED, keys.claim(shop, "other door", "k", NOW));
        assertEquals(GRANTED, keys.claim("other-" + shop, "door", "k", NOW));
        assertEquals(GRANTED, keys.claim(shop, "door", "K", NOW));
        keys.release(shop, "other door", "k");
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", "k", NOW));
    }

    @Test
    void aClaimThatNobodyRenewsRunsOut() {
        keys.claim(shop, "door", "k", NOW);
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", "k", NOW.plusSeconds(LEASE - 1)));
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW.plusSeconds(LEASE + 1)));
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", "k", NOW.plusSeconds(LEASE + 2)));
    }

    @Test
    void aClaimThatIsRenewedLasts() {
        keys.claim(shop, "door", "k", NOW);
        keys.renew(shop, "door", "k", NOW.plusSeconds(LEASE - 1));
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", "k", NOW.plusSeconds(2 * LEASE - 2)));
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW.plusSeconds(2 * LEASE)));
    }

    @Test
    void whatNobodyClaimedIsNeitherRenewedNorReleased() {
        keys.renew(shop, "door", "k", NOW);
        keys.release(shop, "door", "k");
        assertEquals(GRANTED, keys.claim(shop, "door", "k", NOW));
    }

    @Test
    void aKeyOfTheGreatestLengthIsKeptWhole() {
        String longest = "k".repeat(255);
        assertEquals(GRANTED, keys.claim(shop, "door", longest, NOW));
        assertEquals(GRANTED, keys.claim(shop, "door", longest.substring(1) + "l", NOW));
        assertEquals(IN_FLIGHT, keys.claim(shop, "door", longest, NOW));
    }

    @Test
    void ofManyThatClaimAtOnceOneIsGranted() throws Exception {
        int clients = 4;
        ExecutorService threads = Executors.newFixedThreadPool(clients);
        try {
            for (int round = 0; round < 5; round++) {
                String key = "k" + round;
                CyclicBarrier together = new CyclicBarrier(clients);
                List<Callable<Claim>> tries = new ArrayList<>();
                for (int client = 0; client < clients; client++) {
                    tries.add(() -> {
                        together.await();
                        return keys.claim(shop, "door", key, NOW);
                    });
                }
                List<Claim> claims = new ArrayList<>();
                for (Future<Claim> each : threads.invokeAll(tries)) {
                    claims.add(each.get());
                }
                assertEquals(1, java.util.Collections.frequency(claims, GRANTED));
                assertEquals(clients - 1, java.util.Collections.frequency(claims, IN_FLIGHT));
            }
        } finally {
            threads.shutdownNow();
        }
    }
}
