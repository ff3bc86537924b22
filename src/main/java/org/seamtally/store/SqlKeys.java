package org.seamtally.store;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;

/** Keys that clients send, each a row: claimed where it has no answer yet, settled where it has. */
public final class SqlKeys implements IdempotencyKeys {

    private static final String WHERE = " where shop = :shop and door = :door and key_text = :key";

    private final Sql sql;

    /** @param sql where they are kept */
    public SqlKeys(Sql sql) {
        this.sql = sql;
    }

    @Override
    public Claim claim(String shop, String door, String key, Instant now) {
        try {
            return sql.in(handle -> {
                Optional<Row> row = find(handle, shop, door, key);
                if (row.isEmpty()) {
                    on(
                                    handle.createUpdate("insert into idempotency_key (shop, door, key_text, claimed_at)"
                                            + " values (:shop, :door, :key, :now)"),
                                    shop,
                                    door,
                                    key)
                            .bind("now", now)
                            .execute();
                    return new Claim.Granted();
                }
                return again(handle, row.get(), now);
            });
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                // another's claim came between
                return new Claim.InFlight();
            }
            throw e;
        }
    }

    private Claim again(Handle handle, Row row, Instant now) {
        if (row.key.answer() != null) {
            return new Claim.Settled(row.key);
        }
        if (row.claimedAt.isAfter(now.minusSeconds(LEASE_SECONDS))) {
            return new Claim.InFlight();
        }
        touch(handle, row.key.shop(), row.key.door(), row.key.key(), now);
        return new Claim.Granted();
    }

    @Override
    public void renew(String shop, String door, String key, Instant now) {
        sql.in(handle -> touch(handle, shop, door, key, now));
    }

    @Override
    public void release(String shop, String door, String key) {
        sql.in(handle -> on(
                        handle.createUpdate("delete from idempotency_key" + WHERE + " and answer is null"),
                        shop,
                        door,
                        key)
                .execute());
    }

    /** Settles a key, as part of a transaction that keeps what was asked for. */
    static void settle(Handle handle, SettledKey key, Instant now) {
        int settled = bound(
                        handle.createUpdate("update idempotency_key set digest = :digest, answer = :answer" + WHERE
                                + " and answer is null"),
                        key)
                .execute();
        if (settled == 1) {
            return;
        }
        if (find(handle, key.shop(), key.door(), key.key()).isPresent()) {
            throw new KeyTakenException(key.key());
        }
        bound(
                        handle.createUpdate(
                                "insert into idempotency_key (shop, door, key_text, claimed_at, digest, answer)"
                                        + " values (:shop, :door, :key, :now, :digest, :answer)"),
                        key)
                .bind("now", now)
                .execute();
    }

    private static int touch(Handle handle, String shop, String door, String key, Instant now) {
        return on(
                        handle.createUpdate(
                                "update idempotency_key set claimed_at = :now" + WHERE + " and answer is null"),
                        shop,
                        door,
                        key)
                .bind("now", now)
                .execute();
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

    private static <S extends SqlStatement<S>> S bound(S statement, SettledKey key) {
        return on(statement, key.shop(), key.door(), key.key())
                .bind("digest", key.digest())
                .bind("answer", key.answer());
    }

    private static <S extends SqlStatement<S>> S on(S statement, String shop, String door, String key) {
        return statement.bind("shop", shop).bind("door", door).bind("key", key);
    }

    /** @param key its answer null while it is only claimed */
    private record Row(Instant claimedAt, SettledKey key) {}
}
