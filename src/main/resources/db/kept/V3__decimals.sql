-- The currencies in use have four decimals at most.

alter table quote_revision alter column total set data type numeric(30, 4);
