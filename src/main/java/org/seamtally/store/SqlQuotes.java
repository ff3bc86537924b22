package org.seamtally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.seamtally.kept.SettledKey;
import org.seamtally.quote.ComputedBy;
import org.seamtally.quote.KeptQuotes;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.PricedBy;
import org.seamtally.quote.Quote;
import org.seamtally.quote.QuoteNumber;
import org.seamtally.quote.Revision;
import org.seamtally.quote.RevisionHead;
import org.seamtally.quote.Terms;

/** Quotes in SQL, a row a revision: the primary key lets no revision in twice. */
public final class SqlQuotes implements KeptQuotes {

    private static final String HEAD =
            "r.revision, r.made_at, r.engine, r.catalogue, r.customer_reference, r.valid_until,"
                    + " r.notes, r.book, r.book_version, r.book_effective, r.frame, r.currency, r.total";

    private static final String QUOTES = "select q.id, q.quote_no, q.created_at, " + HEAD
            + " from quote q join quote_revision r on r.quote = q.id where q.shop = :shop";

    private final Sql sql;

    /** @param sql where they are kept */
    public SqlQuotes(Sql sql) {
        this.sql = sql;
    }

    @Override
    public QuoteNumber nextNumber(String shop) {
        Optional<QuoteNumber> next = count(shop);
        if (next.isPresent()) {
            return next.get();
        }
        try {
            sql.in(handle -> handle.createUpdate("insert into quote_counter (shop, last_no) values (:shop, 0)")
                    .bind("shop", shop)
                    .execute());
        } catch (RuntimeException e) {
            if (!Faults.isDuplicate(e)) {
                throw e;
            }
            // another's first quote came between, and counts from the same row
        }
        return count(shop).orElseThrow();
    }

    /** The row is locked from its update on, so that no two read the same number. */
    private Optional<QuoteNumber> count(String shop) {
        return sql.in(handle -> {
            int counted = handle.createUpdate("update quote_counter set last_no = last_no + 1 where shop = :shop")
                    .bind("shop", shop)
                    .execute();
            if (counted == 0) {
                // another's first quote may put the row there before it is looked for: it was not counted on all the
                // same
                return Optional.empty();
            }
            return handle.createQuery("select last_no from quote_counter where shop = :shop")
                    .bind("shop", shop)
                    .mapTo(Long.class)
                    .findOne()
                    .map(QuoteNumber::new);
        });
    }

    @Override
    public void create(String shop, UUID id, QuoteNumber number, Instant created, Revision first, SettledKey key) {
        sql.in(handle -> {
            handle.createUpdate("insert into quote (id, shop, quote_no, created_at) values (:id, :shop, :number, :at)")
                    .bind("id", id)
                    .bind("shop", shop)
                    .bind("number", number.value())
                    .bind("at", created)
                    .execute();
            return insert(handle, shop, id, number, first, key);
        });
    }

    @Override
    public boolean revise(String shop, UUID id, Revision next, SettledKey key) {
        try {
            return sql.in(handle -> {
                Optional<QuoteNumber> number =
                        numberBefore(handle, shop, id, next.head().number());
                number.ifPresent(found -> insert(handle, shop, id, found, next, key));
                return number.isPresent();
            });
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                return false;
            }
            throw e;
        }
    }

    /** The quote's number, where its latest revision is the one before this. */
    private static Optional<QuoteNumber> numberBefore(Handle handle, String shop, UUID id, int revision) {
        return handle.createQuery("select q.quote_no from quote q where q.id = :id and q.shop = :shop"
                        + " and :latest = (select max(r.revision) from quote_revision r where r.quote = q.id)")
                .bind("id", id)
                .bind("shop", shop)
                .bind("latest", revision - 1)
                .mapTo(Long.class)
                .findOne()
                .map(QuoteNumber::new);
    }

    private static int insert(
            Handle handle, String shop, UUID id, QuoteNumber number, Revision revision, SettledKey key) {
        RevisionHead head = revision.head();
        int rows = handle.createUpdate("insert into quote_revision (quote, revision, shop, made_at, engine, catalogue,"
                        + " customer_reference, valid_until, notes, book, book_version, book_effective, frame,"
                        + " currency, total, searched, request, estimate) values (:quote, :revision, :shop, :made,"
                        + " :engine, :catalogue, :reference, :until, :notes, :book, :bookVersion, :bookEffective,"
                        + " :frame, :currency, :total, :searched, :request, :estimate)")
                .bind("quote", id)
                .bind("revision", head.number())
                .bind("shop", shop)
                .bind("made", head.made())
                .bind("engine", head.engine().version())
                .bind("catalogue", head.engine().catalogue())
                .bind("reference", head.terms().customerReference().orElse(null))
                .bind("until", head.terms().validUntil().orElse(null))
                .bind("notes", head.terms().notes().orElse(null))
                .bind("book", head.priceBook().map(by -> by.book().text()).orElse(null))
                .bind("bookVersion", head.priceBook().map(PricedBy::version).orElse(null))
                .bind("bookEffective", head.priceBook().map(PricedBy::effective).orElse(null))
                .bind("frame", head.frame().orElse(null))
                .bind("currency", head.total().getCurrencyUnit().getCode())
                .bind("total", head.total().getAmount())
                .bind("searched", head.searched(number))
                .bind("request", revision.request())
                .bind("estimate", revision.estimate())
                .execute();
        if (key != null) {
            SqlKeys.settle(handle, key, head.made());
        }
        return rows;
    }

    @Override
    public Optional<Quote> find(String shop, UUID id) {
        return sql
                .in(handle -> handle.createQuery(QUOTES + " and q.id = :id order by r.revision")
                        .bind("shop", shop)
                        .bind("id", id)
                        .map((row, context) -> quote(row))
                        .list())
                .stream()
                .reduce((quote, next) -> quote.with(next.latest()));
    }

    @Override
    public Optional<Revision> revision(String shop, UUID id, int number) {
        return sql.in(handle -> handle.createQuery("select " + HEAD + ", r.request, r.estimate from quote_revision r"
                        + " where r.quote = :id and r.revision = :number and r.shop = :shop")
                .bind("id", id)
                .bind("number", number)
                .bind("shop", shop)
                .map((row, context) -> new Revision(head(row), row.getBytes("request"), row.getBytes("estimate")))
                .findOne());
    }

    @Override
    public List<Quote> list(String shop, String search, int limit, UUID after) {
        return sql.in(handle -> {
            Query query = handle.createQuery(page(search != null, after != null))
                    .bind("shop", shop)
                    .bind("limit", limit);
            if (search != null) {
                query.bind("pattern", pattern(search));
            }
            if (after != null) {
                query.bind("after", after);
            }
            return query.map((row, context) -> quote(row)).list();
        });
    }

    /**
     * The query of a page: in the order of all of an index's columns, so that no more rows are read than are shown, or
     * looked through.
     */
    static String page(boolean search, boolean older) {
        return QUOTES
                + " and r.revision = (select max(l.revision) from quote_revision l where l.quote = q.id)"
                + (search ? " and r.searched like :pattern escape '!'" : "")
                + (older
                        ? " and q.quote_no < (select a.quote_no from quote a where a.id = :after and a.shop = :shop)"
                        : "")
                + " order by q.shop desc, q.quote_no desc fetch first :limit rows only";
    }

    /** Finds the text anywhere; what a pattern would read as a wildcard stands for itself. */
    private static String pattern(String search) {
        return "%" + RevisionHead.folded(search).replaceAll("[!%_]", "!$0") + "%";
    }

    private static Quote quote(ResultSet row) throws SQLException {
        return new Quote(
                row.getObject("id", UUID.class),
                new QuoteNumber(row.getLong("quote_no")),
                InstantColumn.of(row, "created_at"),
                List.of(head(row)));
    }

    private static RevisionHead head(ResultSet row) throws SQLException {
        return new RevisionHead(
                row.getInt("revision"),
                InstantColumn.of(row, "made_at"),
                new ComputedBy(row.getString("engine"), row.getString("catalogue")),
                new Terms(
                        Optional.ofNullable(row.getString("customer_reference")),
                        Optional.ofNullable(row.getObject("valid_until", LocalDate.class)),
                        Optional.ofNullable(row.getString("notes"))),
                priceBook(row),
                Optional.ofNullable(row.getString("frame")),
                // the column has more decimals than most currencies
                Money.of(
                        CurrencyUnit.of(row.getString("currency")),
                        row.getBigDecimal("total").stripTrailingZeros()));
    }

    private static Optional<PricedBy> priceBook(ResultSet row) throws SQLException {
        String name = row.getString("book");
        return name == null
                ? Optional.empty()
                : Optional.of(new PricedBy(
                        new PriceBookName(name),
                        row.getInt("book_version"),
                        row.getObject("book_effective", LocalDate.class)));
    }
}
