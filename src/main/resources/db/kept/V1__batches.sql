-- Batches, keys that clients send, and the tasks that hand chunks out.
-- One file for both databases; ${bytes} is the type of long binary values, the one word that differs.

create table batch (
    id uuid not null primary key,
    shop varchar(100) not null,
    engine varchar(100) not null,
    units varchar(10) not null,
    form varchar(10) not null,
    created_at timestamp(6) with time zone not null,
    -- when something was added last: an upload that stands still is swept
    touched_at timestamp(6) with time zone not null,
    -- all four set together when the upload ends
    sealed_at timestamp(6) with time zone,
    chunks integer,
    frames bigint,
    digest varchar(64),
    cancelled_at timestamp(6) with time zone
);
create index batch_by_time on batch (shop, created_at, id);

create table batch_chunk (
    batch uuid not null references batch (id) on delete cascade,
    chunk integer not null,
    shop varchar(100) not null,
    frames integer not null,
    content ${bytes} not null,
    primary key (batch, chunk)
);

-- a row is the chunk's results and its being done at once: the key lets no second in
create table chunk_result (
    batch uuid not null references batch (id) on delete cascade,
    chunk integer not null,
    shop varchar(100) not null,
    frames_read bigint not null,
    frames_done bigint not null,
    frames_refused bigint not null,
    finished_at timestamp(6) with time zone not null,
    lines ${bytes} not null,
    refusals ${bytes} not null,
    totals ${bytes} not null,
    primary key (batch, chunk)
);

create table idempotency_key (
    shop varchar(100) not null,
    door varchar(100) not null,
    key_text varchar(400) not null,
    claimed_at timestamp(6) with time zone not null,
    -- both set together when the request was carried out
    digest varchar(64),
    answer ${bytes},
    primary key (shop, door, key_text)
);

-- columns and their names are the task library's; the shop stands in the instance's name
create table chunk_task (
    task_name varchar(150) not null,
    task_instance varchar(200) not null,
    task_data ${bytes},
    execution_time timestamp(6) with time zone not null,
    picked boolean not null,
    picked_by varchar(50),
    last_success timestamp(6) with time zone,
    last_failure timestamp(6) with time zone,
    consecutive_failures integer,
    last_heartbeat timestamp(6) with time zone,
    version bigint not null,
    primary key (task_name, task_instance)
);
create index chunk_task_due on chunk_task (execution_time);
create index chunk_task_heartbeat on chunk_task (last_heartbeat);
