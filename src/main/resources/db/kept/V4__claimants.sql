-- Whose claim a key is, so that nobody renews or gives back another's; how long a key has been there; what a batch is
-- called, and that it is on its way out; which versions of the engine are at work.

-- empty in claims from before this: nobody renews those, and they run out
alter table idempotency_key add column claimant uuid;
-- claimed_at is when a key was claimed, renewed or settled last
create index idempotency_key_by_time on idempotency_key (claimed_at);

-- 200 characters, which one of the databases counts in halves where they are rare ones
alter table batch add column name varchar(400);
-- set when sealed_at is taken away: nobody sees the batch any more, and its rows go a few at a time
alter table batch add column removed_at timestamp(6) with time zone;

-- of the program and of no shop
create table engine_at_work (
    engine varchar(100) not null primary key,
    lives_until timestamp(6) with time zone not null
);
