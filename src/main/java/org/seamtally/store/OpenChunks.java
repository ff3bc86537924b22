package org.seamtally.store;

import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.seamtally.batch.KeptBatches.ChunkName;

/** Tasks for the open chunks of one engine version: a row each in the task library's table. */
final class OpenChunks {

    /** The task library's table. */
    static final String TABLE = "chunk_task";

    /** What the names of tasks begin with; the engine's version follows. */
    static final String TASK = "chunk ";

    /** A task's instance in SQL: of the chunk c of the batch b. */
    static final String INSTANCE = "b.shop || '/' || cast(b.id as varchar(36)) || '/' || cast(c.chunk as varchar(10))";

    // in the order of the chunks, since results are read up to the first gap
    private static final String MAKE =
            "insert into chunk_task (task_name, task_instance, execution_time, picked, version)"
                    + " select :task, " + INSTANCE + ","
                    + " b.sealed_at + c.chunk * interval '0.000001' second, false, 1"
                    + " from batch b join batch_chunk c on c.batch = b.id"
                    + " where b.engine = :engine and b.sealed_at is not null and b.cancelled_at is null"
                    + " and b.chunks > (select count(*) from chunk_result d where d.batch = b.id)"
                    + " and not exists (select 1 from chunk_result r where r.batch = c.batch and r.chunk = c.chunk)"
                    + " and not exists (select 1 from chunk_task t where t.task_name = :task and t.task_instance ="
                    + " " + INSTANCE + ")";

    private static final String FREE = "update chunk_task set picked = false, picked_by = null,"
            + " last_heartbeat = null, version = version + 1 where picked = true";

    private final Sql sql;
    private final String engine;

    OpenChunks(Sql sql, String engine) {
        this.sql = sql;
        this.engine = engine;
    }

    /** Name of the tasks. */
    String task() {
        return TASK + engine;
    }

    /** The chunk that a task is for. */
    static ChunkName name(String instance) {
        int number = instance.lastIndexOf('/');
        int batch = instance.lastIndexOf('/', number - 1);
        return new ChunkName(
                instance.substring(0, batch),
                UUID.fromString(instance.substring(batch + 1, number)),
                Integer.parseInt(instance.substring(number + 1)));
    }

    /** Makes the tasks that are missing; how many. */
    int makeTasks() {
        try {
            return sql.in(handle -> handle.createUpdate(MAKE)
                    .bind("task", task())
                    .bind("engine", engine)
                    .execute());
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                // another replica made them at the same moment
                return 1;
            }
            throw e;
        }
    }

    /** Gives back whatever was under way: where one process alone works, it died. */
    void freeAll() {
        sql.in((Handle handle) -> handle.execute(FREE));
    }

    /** Gives back what a replica had in hand. */
    void freeOf(String replica) {
        sql.in(handle -> handle.createUpdate(FREE + " and picked_by = :replica")
                .bind("replica", replica)
                .execute());
    }
}
