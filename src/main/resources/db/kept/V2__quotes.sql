-- Price books and quotes. Rows are added and never changed, nor removed.

create table price_book_version (
    shop varchar(100) not null,
    name varchar(100) not null,
    version integer not null,
    effective date not null,
    note varchar(2000),
    prices ${bytes} not null,
    made_at timestamp(6) with time zone not null,
    primary key (shop, name, version)
);

create table quote (
    id uuid not null primary key,
    shop varchar(100) not null,
    quote_no bigint not null,
    created_at timestamp(6) with time zone not null,
    unique (shop, quote_no)
);

-- the last number that was given out: the one row that changes
create table quote_counter (
    shop varchar(100) not null primary key,
    last_no bigint not null
);

create table quote_revision (
    quote uuid not null references quote (id),
    revision integer not null,
    shop varchar(100) not null,
    made_at timestamp(6) with time zone not null,
    engine varchar(100) not null,
    catalogue varchar(100) not null,
    customer_reference varchar(1000),
    valid_until date,
    notes varchar(10000),
    book varchar(100),
    book_version integer,
    book_effective date,
    frame varchar(1000),
    currency varchar(3) not null,
    total numeric(30, 3) not null,
    -- all that a search looks through, in small letters: each database would fold them in a way of its own
    searched varchar(30000) not null,
    request ${bytes} not null,
    estimate ${bytes} not null,
    primary key (quote, revision)
);
