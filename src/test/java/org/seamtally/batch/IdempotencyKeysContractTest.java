package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
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
import org.seamtally.kept.KeyHolder;

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

    private KeyHolder holder(String door, String key) {
        return new KeyHolder(shop, door, key, UUID.randomUUID());
    }

    private Claim claim(String door, String key, Instant now) {
        return keys.claim(holder(door, key), now);
    }

    @Test
    void aKeyIsClaimedOnceUntilItIsReleased() {
        KeyHolder first = holder("door", "k");
        assertEquals(GRANTED, keys.claim(first, NOW));
        assertEquals(IN_FLIGHT, keys.claim(first, NOW));
        assertEquals(IN_FLIGHT, claim("door", "k", NOW));
        keys.release(first);
        keys.release(first);
        assertEquals(GRANTED, claim("door", "k", NOW));
    }

    @Test
    void aKeyIsOneShopsAtOneEndpoint() {
        KeyHolder otherDoor = holder("other door", "k");
        assertEquals(GRANTED, claim("door", "k", NOW));
        assertEquals(GRANTED, keys.claim(otherDoor, NOW));
        assertEquals(GRANTED, keys.claim(new KeyHolder("other-" + shop, "door", "k", UUID.randomUUID()), NOW));
        assertEquals(GRANTED, claim("door", "K", NOW));
        keys.release(otherDoor);
        assertEquals(IN_FLIGHT, claim("door", "k", NOW));
    }

    @Test
    void aClaimThatNobodyRenewsRunsOut() {
        claim("door", "k", NOW);
        assertEquals(IN_FLIGHT, claim("door", "k", NOW.plusSeconds(LEASE - 1)));
        assertEquals(GRANTED, claim("door", "k", NOW.plusSeconds(LEASE + 1)));
        assertEquals(IN_FLIGHT, claim("door", "k", NOW.plusSeconds(LEASE + 2)));
    }

    @Test
    void aClaimThatIsRenewedLasts() {
        KeyHolder holder = holder("door", "k");
        keys.claim(holder, NOW);
        keys.renew(holder, NOW.plusSeconds(LEASE - 1));
        assertEquals(IN_FLIGHT, claim("door", "k", NOW.plusSeconds(2 * LEASE - 2)));
        assertEquals(GRANTED, claim("door", "k", NOW.plusSeconds(2 * LEASE)));
    }

    @Test
    void aClaimThatWasTakenOverIsNotGivenBackByWhoHadItBefore() {
        KeyHolder slow = holder("door", "k");
        keys.claim(slow, NOW);
        KeyHolder quick = holder("door", "k");
        assertEquals(GRANTED, keys.claim(quick, NOW.plusSeconds(LEASE + 1)));
        keys.release(slow);
        assertEquals(IN_FLIGHT, claim("door", "k", NOW.plusSeconds(LEASE + 2)));
        keys.release(quick);
        assertEquals(GRANTED, claim("door", "k", NOW.plusSeconds(LEASE + 3)));
    }

    @Test
    void aClaimThatWasTakenOverIsNotRenewedByWhoHadItBefore() {
        KeyHolder slow = holder("door", "k");
        keys.claim(slow, NOW);
        KeyHolder quick = holder("door", "k");
        keys.claim(quick, NOW.plusSeconds(LEASE + 1));
        keys.renew(slow, NOW.plusSeconds(2 * LEASE));
        assertEquals(GRANTED, claim("door", "k", NOW.plusSeconds(2 * LEASE + 2)));
    }

    @Test
    void whatNobodyClaimedIsNeitherRenewedNorReleased() {
        KeyHolder holder = holder("door", "k");
        keys.renew(holder, NOW);
        keys.release(holder);
        assertEquals(GRANTED, claim("door", "k", NOW));
    }

    @Test
    void keysThatWereLastUsedLongAgoAreForgotten() {
        // more than go at once
        for (int i = 0; i < 250; i++) {
            claim("door", "old" + i, NOW);
        }
        KeyHolder renewed = holder("door", "renewed");
        keys.claim(renewed, NOW);
        keys.renew(renewed, NOW.plusSeconds(10));
        claim("door", "young", NOW.plusSeconds(10));
        // others' keys in a shared database may go too
        assertTrue(keys.forget(NOW.plusSeconds(5)) >= 250);
        assertEquals(IN_FLIGHT, claim("door", "renewed", NOW.plusSeconds(10)));
        assertEquals(IN_FLIGHT, claim("door", "young", NOW.plusSeconds(10)));
        for (int i = 0; i < 250; i++) {
            assertEquals(GRANTED, claim("door", "old" + i, NOW), "old" + i);
        }
        assertEquals(0, keys.forget(NOW.minus(Duration.ofDays(1))));
    }

    @Test
    void aKeyOfTheGreatestLengthIsKeptWhole() {
        String longest = "k".repeat(255);
        assertEquals(GRANTED, claim("door", longest, NOW));
        assertEquals(GRANTED, claim("door", longest.substring(1) + "l", NOW));
        assertEquals(IN_FLIGHT, claim("door", longest, NOW));
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
                        return claim("door", key, NOW);
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
