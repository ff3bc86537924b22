package org.seamtally.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.seamtally.batch.KeptBatches.ChunkName;

/** Rows of the task library's table that nobody will carry out any more. */
final class LeftTasks {

    /** Names removed at once. */
    private static final int FEW = 100;

    // a task that is picked is its replica's: who carries it out removes it
    private static final String OF_BATCH = "delete from chunk_task where picked = false"
            + " and task_name = (select '" + OpenChunks.TASK + "' || engine from batch where id = :batch)"
            + " and task_instance in (select " + OpenChunks.INSTANCE
            + " from batch b join batch_chunk c on c.batch = b.id where b.id = :batch)";

    private static final String OF_ENGINES_GONE =
            "select task_name, task_instance from chunk_task where task_name not in" + " (select '" + OpenChunks.TASK
                    + "' || engine from engine_at_work where lives_until > :now)";

    private static final String IS_OPEN = "select count(*) from batch b where b.id = :batch and b.sealed_at is not null"
            + " and b.cancelled_at is null and b.chunks > (select count(*) from chunk_result r where r.batch = b.id)";

    private final Sql sql;

    LeftTasks(Sql sql) {
        this.sql = sql;
    }

    /** Removes a batch's tasks, in the transaction that ends or hides it; its rows must still be there. */
    static int removeOf(Handle handle, UUID batch) {
        return handle.createUpdate(OF_BATCH).bind("batch", batch).execute();
    }

    /**
     * Removes tasks of engine versions that do not run, of batches that have ended or are gone; how many. Those of versions
     * that run go when they are carried out.
     */
    int removeOfEnginesGone(Instant now) {
        Map<UUID, List<Task>> byBatch = new TreeMap<>();
        sql.in(handle -> handle.createQuery(OF_ENGINES_GONE)
                        .bind("now", now)
                        .map((row, context) -> new Task(row.getString("task_name"), row.getString("task_instance")))
                        .list())
                .forEach(task -> byBatch.computeIfAbsent(task.chunk().batch(), batch -> new ArrayList<>())
                        .add(task));
        int gone = 0;
        for (Map.Entry<UUID, List<Task>> batch : byBatch.entrySet()) {
            gone += isOpen(batch.getKey()) ? 0 : remove(batch.getValue());
        }
        return gone;
    }

    private record Task(String name, String instance) {

        ChunkName chunk() {
            return OpenChunks.name(instance);
        }
    }

    private boolean isOpen(UUID batch) {
        return sql.in(handle -> handle.createQuery(IS_OPEN)
                        .bind("batch", batch)
                        .mapTo(Integer.class)
                        .one()
                == 1);
    }

    private int remove(List<Task> tasks) {
        int gone = 0;
        for (int from = 0; from < tasks.size(); from += FEW) {
            List<Task> few = tasks.subList(from, Math.min(tasks.size(), from + FEW));
            gone += sql.in(handle -> handle.createUpdate(
                            "delete from chunk_task where task_name = :name and task_instance in (<instances>)")
                    .bind("name", few.get(0).name())
                    .bindList("instances", few.stream().map(Task::instance).toList())
                    .execute());
        }
        return gone;
    }
}
