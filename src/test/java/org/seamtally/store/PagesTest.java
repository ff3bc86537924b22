package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.api.Test;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.ChunkResult;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches;

/** A page of a list costs the embedded database what the page holds, however much is kept. */
class PagesTest {

    private static final int KEPT = 300;
    private static final int SHOWN = 10;

    /** What the database says it looked at in one table, for one reason. */
    private static final Pattern LOOKED_AT = Pattern.compile("scanCount: (\\d+)");

    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    @Test
    void aPageOfBatchesReadsNoMoreThanItShows() {
        Sql sql = Databases.h2();
        SqlBatches batches = new SqlBatches(sql, InstantSource.fixed(START));
        List<UUID> ids = new ArrayList<>();
        for (int i = 0; i < KEPT; i++) {
            UUID id = UUID.randomUUID();
            ids.add(id);
            Instant at = START.plusSeconds(i / 2);
            batches.begin(new BatchPlan(id, "default", "engine", "si", Form.NDJSON, at, Optional.empty()));
            batches.add("default", id, 0, new Chunk(2, new byte[10]));
            batches.seal("default", id, new KeptBatches.Sealed(1, 2, "digest", at), null);
            batches.finish(id, 0, new ChunkResult(new Counts(2, 2, 0), new byte[9], new byte[9], new byte[9]), at);
        }
        Map<String, Object> values = Map.of(
                "shop",
                "default",
                "now",
                START,
                "limit",
                SHOWN,
                "at",
                START.plusSeconds(KEPT / 4),
                "after",
                ids.get(KEPT / 2));

        assertShownAlone(looked(sql, SqlBatches.page(false), values));
        assertShownAlone(looked(sql, SqlBatches.page(true), values));
        assertEquals(SHOWN, batches.list("default", SHOWN, ids.get(KEPT / 2)).size());
        assertTrue(batches.list("default", SHOWN, null).stream().allMatch(batch -> batch.chunksDone() == 1));
    }

    @Test
    void aPageOfQuotesReadsNoMoreThanItShows() {
        Sql sql = Databases.h2();
        UUID middle = sql.in(handle -> {
            handle.execute(
                    "insert into quote (id, shop, quote_no, created_at) select random_uuid(), 'default', x,"
                            + " current_timestamp from system_range(1, ?)",
                    KEPT);
            handle.execute("insert into quote_revision (quote, revision, shop, made_at, engine, catalogue, currency,"
                    + " total, searched, request, estimate) select id, 1, 'default', created_at, 'e', 'c', 'USD', 1,"
                    + " 'trailer', X'00', X'00' from quote");
            return handle.createQuery("select id from quote where quote_no = " + KEPT / 2)
                    .mapTo(UUID.class)
                    .one();
        });
        Map<String, Object> values = Map.of("shop", "default", "limit", SHOWN, "after", middle, "pattern", "%trailer%");

        for (boolean search : new boolean[] {false, true}) {
            assertShownAlone(looked(sql, SqlQuotes.page(search, false), values));
            assertShownAlone(looked(sql, SqlQuotes.page(search, true), values));
        }
        assertEquals(
                SHOWN, new SqlQuotes(sql).list("default", null, SHOWN, middle).size());
    }

    /** One row beyond the page, and a second table's rows beside the first's. */
    private static void assertShownAlone(List<Integer> looked) {
        assertTrue(!looked.isEmpty() && looked.stream().allMatch(rows -> rows <= 2 * SHOWN + 2), looked::toString);
    }

    private static List<Integer> looked(Sql sql, String query, Map<String, Object> values) {
        String plan = sql.in((Handle handle) -> handle.createQuery("explain analyze " + query)
                .bindMap(values)
                .mapTo(String.class)
                .one());
        return LOOKED_AT
                .matcher(plan)
                .results()
                .map(found -> Integer.valueOf(found.group(1)))
                .toList();
    }
}
