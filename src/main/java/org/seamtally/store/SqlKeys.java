package org.seamtally.store;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;

/** Keys that clients send, each a row: claimed where it has no answer yet, settled where it has. */
public final class SqlKeys implements IdempotencyKeys {

    private static final String WHERE = " where shop = :shop and door = :door and key_text = :key";

    /** What a holder may change: its own claim, as long as it is one. */
    private static final String OWN = WHERE + " and claimant = :claimant and answer is null";

    /** Forgotten in one transaction: an answer may be some hundred kilobytes long. */
    private static final int FEW = 100;

    // the second condition is looked at again where a row was claimed anew meanwhile
    private static final String FORGET = "delete from idempotency_key where (shop, door, key_text) in"
            + " (select shop, door, key_text from idempotency_key where claimed_at < :before"
            + " order by claimed_at fetch first :few rows only) and claimed_at < :before";

    private final Sql sql;

    /** @param sql where they are kept */
    public SqlKeys(Sql sql) {
        this.sql = sql;
    }

    @Override
    public Claim claim(KeyHolder holder, Instant now) {
        try {
            return sql.in(handle -> {
                Optional<Row> row = find(handle, holder.shop(), holder.door(), holder.key());
                return row.isEmpty() ? first(handle, holder, now) : again(handle, row.get(), holder, now);
            });
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                // another's claim came between
                return new Claim.InFlight();
            }
            throw e;
        }
    }

    private static Claim first(Handle handle, KeyHolder holder, Instant now) {
        held(
                        handle.createUpdate("insert into idempotency_key (shop, door, key_text, claimant, claimed_at)"
                                + " values (:shop, :door, :key, :claimant, :now)"),
                        holder)
                .bind("now", now)
                .execute();
        return new Claim.Granted();
    }

    private static Claim again(Handle handle, Row row, KeyHolder holder, Instant now) {
        if (row.key.answer() != null) {
            return new Claim.Settled(row.key);
        }
        if (row.claimedAt.isAfter(now.minusSeconds(LEASE_SECONDS))) {
            return new Claim.InFlight();
        }
        held(handle.createUpdate("update idempotency_key set claimant = :claimant, claimed_at = :now" + WHERE), holder)
                .bind("now", now)
                .execute();
        return new Claim.Granted();
    }

    @Override
    public void renew(KeyHolder holder, Instant now) {
        sql.in(handle -> held(handle.createUpdate("update idempotency_key set claimed_at = :now" + OWN), holder)
                .bind("now", now)
                .execute());
    }

    @Override
    public void release(KeyHolder holder) {
        sql.in(handle -> held(handle.createUpdate("delete from idempotency_key" + OWN), holder)
                .execute());
    }

    @Override
    public int forget(Instant before) {
        int all = 0;
        int few;
        do {
            few = sql.in(handle -> handle.createUpdate(FORGET)
                    .bind("before", before)
                    .bind("few", FEW)
                    .execute());
            all += few;
        } while (few == FEW);
        return all;
    }

    /**
     * Settles a key, as part of a transaction that keeps what was asked for. It need not be claimed any more: what counts is
     * who is first.
     *
     * @throws KeyTakenException where another settled it first
     */
    static void settle(Handle handle, SettledKey key, Instant now) {
        int settled = bound(
                        handle.createUpdate("update idempotency_key set digest = :digest, answer = :answer,"
                                + " claimed_at = :now" + WHERE + " and answer is null"),
                        key,
                        now)
                .execute();
        if (settled == 1) {
            return;
        }
        if (find(handle, key.shop(), key.door(), key.key()).isPresent()) {
            throw new KeyTakenException(key.key());
        }
        try {
            bound(
                            handle.createUpdate(
                                    "insert into idempotency_key (shop, door, key_text, claimed_at, digest, answer)"
                                            + " values (:shop, :door, :key, :now, :digest, :answer)"),
                            key,
                            now)
                    .execute();
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                // another claimed or settled it at the same moment
                throw new KeyTakenException(key.key());
            }
            throw e;
        }
    }

    private static Optional<Row> find(Handle handle, String shop, String door, String key) {
        return on(
                        handle.createQuery(
                                "select claimed_at, digest, answer from idempotency_key" + WHERE + " for update"),
                        shop,
                        door,
                        key)
                .map((row, context) -> new Row(
                        InstantColumn.of(row, "claimed_at"),
                        new SettledKey(shop, door, key, row.getString("digest"), row.getBytes("answer"))))
                .findOne();
    }

    private static <S extends SqlStatement<S>> S held(S statement, KeyHolder holder) {
        return on(statement, holder.shop(), holder.door(), holder.key()).bind("claimant", holder.claimant());
    }

    private static <S extends SqlStatement<S>> S bound(S statement, SettledKey key, Instant now) {
        return on(statement, key.shop(), key.door(), key.key())
                .bind("digest", key.digest())
                .bind("answer", key.answer())
                .bind("now", now);
    }

    private static <S extends SqlStatement<S>> S on(S statement, String shop, String door, String key) {
        return statement.bind("shop", shop).bind("door", door).bind("key", key);
    }

    /** @param key its answer null while it is only claimed */
    private record Row(Instant claimedAt, SettledKey key) {}
}
