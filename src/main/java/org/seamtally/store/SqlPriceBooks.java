package org.seamtally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.PriceBookVersion;

/** Price books in SQL, a row a version: the primary key lets no version in twice. */
public final class SqlPriceBooks implements KeptPriceBooks {

    private final Sql sql;

    /** @param sql where they are kept */
    public SqlPriceBooks(Sql sql) {
        this.sql = sql;
    }

    @Override
    public boolean add(String shop, PriceBookVersion version) {
        try {
            return sql.in(handle -> latest(handle, shop, version.book()) == version.number() - 1
                    && handle.createUpdate("insert into price_book_version"
                                            + " (shop, name, version, effective, note, prices, made_at)"
                                            + " values (:shop, :name, :version, :effective, :note, :prices, :made)")
                                    .bind("shop", shop)
                                    .bind("name", version.book().text())
                                    .bind("version", version.number())
                                    .bind("effective", version.effective())
                                    .bind("note", version.note().orElse(null))
                                    .bind("prices", version.prices())
                                    .bind("made", version.made())
                                    .execute()
                            == 1);
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                return false;
            }
            throw e;
        }
    }

    /** @return 0 where there is no such book */
    private static int latest(Handle handle, String shop, PriceBookName name) {
        return handle.createQuery(
                        "select coalesce(max(version), 0) from price_book_version where shop = :shop and name = :name")
                .bind("shop", shop)
                .bind("name", name.text())
                .mapTo(Integer.class)
                .one();
    }

    @Override
    public Optional<PriceBook> find(String shop, PriceBookName name) {
        return sql
                .in(handle -> books(handle.createQuery(
                                "select * from price_book_version where shop = :shop and name = :name order by version")
                        .bind("shop", shop)
                        .bind("name", name.text())
                        .map((row, context) -> version(row))
                        .list()))
                .stream()
                .findFirst();
    }

    @Override
    public List<PriceBook> list(String shop, int limit, PriceBookName after) {
        // names are put in order here: databases do so each by a collation of its own
        List<String> names = sql
                .in(handle -> handle.createQuery("select distinct name from price_book_version where shop = :shop")
                        .bind("shop", shop)
                        .mapTo(String.class)
                        .list())
                .stream()
                .sorted()
                .filter(name -> after == null || name.compareTo(after.text()) > 0)
                .limit(limit)
                .toList();
        return names.isEmpty()
                ? List.of()
                : books(sql.in(handle -> handle.createQuery(
                                "select * from price_book_version where shop = :shop" + " and name in (<names>)")
                        .bind("shop", shop)
                        .bindList("names", names)
                        .map((row, context) -> version(row))
                        .list()));
    }

    /** Versions by their books, in the order of names and numbers. */
    private static List<PriceBook> books(List<PriceBookVersion> versions) {
        Map<PriceBookName, List<PriceBookVersion>> books = new TreeMap<>();
        versions.forEach(version ->
                books.computeIfAbsent(version.book(), name -> new ArrayList<>()).add(version));
        return books.entrySet().stream()
                .map(book -> new PriceBook(
                        book.getKey(),
                        book.getValue().stream()
                                .sorted(Comparator.comparingInt(PriceBookVersion::number))
                                .toList()))
                .toList();
    }

    private static PriceBookVersion version(ResultSet row) throws SQLException {
        return new PriceBookVersion(
                new PriceBookName(row.getString("name")),
                row.getInt("version"),
                row.getObject("effective", LocalDate.class),
                Optional.ofNullable(row.getString("note")),
                row.getBytes("prices"),
                InstantColumn.of(row, "made_at"));
    }
}
