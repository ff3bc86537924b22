package org.seamtally.api;

import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.seamtally.batch.BatchPlan;
import org.seamtally.page.QuoteForm;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.quote.PriceBookName;
import org.seamtally.wire.ProblemReport;

/** A request's query parameters: those that its endpoint takes, each at most once, and no other. */
final class Query {

    /** Items of a list where no limit is asked for. */
    static final int USUAL_LIMIT = 20;

    /** Most items of a list: a page to be read, not a file to be fetched. */
    static final int GREATEST_LIMIT = 100;

    private static final String UNITS = "units";
    private static final String COURSE = "course";
    private static final String JOINT = "joint";
    private static final String FORM = "form";
    private static final String FORMAT = "format";
    private static final String REVISION = "revision";
    private static final String LIMIT = "limit";
    private static final String AFTER = "after";
    private static final String SEARCH = "search";
    private static final String NAME = "name";
    private static final String FROM = "from";
    private static final String TO = "to";

    /** Longest text that is searched for: longer than any name. */
    static final int LONGEST_SEARCH = 200;

    private static final List<String> LIMITS = List.of("a whole number from 1 to " + GREATEST_LIMIT);
    private static final List<String> AFTERS = List.of("an id out of the list");

    private static final List<String> SYSTEMS =
            Arrays.stream(UnitSystem.values()).map(UnitSystem::word).toList();

    private static final List<String> TRUTHS = List.of("true", "false");

    private final MultivaluedMap<String, String> parameters;

    private Query(UriInfo uri, String... taken) {
        parameters = uri.getQueryParameters();
        Set<String> names = Set.of(taken);
        for (String name : parameters.keySet()) {
            if (!names.contains(name)) {
                throw new ProblemException(
                        ProblemReport.badQuery(name, parameters.getFirst(name), List.of(leftOut(taken))));
            }
        }
    }

    private static String leftOut(String... taken) {
        return taken.length == 0
                ? "left out: none is taken"
                : "left out: " + String.join(" and ", taken) + (taken.length == 1 ? " alone is taken" : " are taken");
    }

    /**
     * The units asked for; SI where none are.
     *
     * @throws ProblemException 400 for another word or another parameter
     */
    static UnitSystem units(UriInfo uri) {
        UnitSystem asked = unitsOrNull(uri);
        return asked == null ? UnitSystem.SI : asked;
    }

    /** The units asked for; null where none are. */
    static UnitSystem unitsOrNull(UriInfo uri) {
        return new Query(uri, UNITS).units();
    }

    private UnitSystem units() {
        String word = one(UNITS, SYSTEMS);
        if (word != null && !SYSTEMS.contains(word)) {
            throw new ProblemException(ProblemReport.badQuery(UNITS, word, SYSTEMS));
        }
        return word == null ? null : UnitSystem.of(word);
    }

    /**
     * What is asked of a deposit besides the joint.
     *
     * @param units of the answer
     * @param course whether the places along the seam are asked for
     */
    record OfDeposit(UnitSystem units, boolean course) {}

    /**
     * What is asked of a deposit.
     *
     * @throws ProblemException 400 for another word or another parameter
     */
    static OfDeposit deposit(UriInfo uri) {
        Query query = new Query(uri, UNITS, COURSE);
        UnitSystem units = query.units();
        String course = query.one(COURSE, TRUTHS);
        if (course != null && !TRUTHS.contains(course)) {
            throw new ProblemException(ProblemReport.badQuery(COURSE, course, TRUTHS));
        }
        return new OfDeposit(units == null ? UnitSystem.SI : units, "true".equals(course));
    }

    /**
     * What is asked of a frame in brief.
     *
     * @param units of the answer
     * @param joint the one that is asked for in full, by its place from 1; empty for none
     */
    record OfTotals(UnitSystem units, OptionalInt joint) {}

    /**
     * What is asked of a frame in brief.
     *
     * @throws ProblemException 400 for other units, for what is no place, or for another parameter
     */
    static OfTotals totals(UriInfo uri) {
        Query query = new Query(uri, UNITS, JOINT);
        UnitSystem units = query.units();
        return new OfTotals(
                units == null ? UnitSystem.SI : units,
                query.parameters.containsKey(JOINT)
                        ? OptionalInt.of(query.number(JOINT, "a joint's place, from 1"))
                        : OptionalInt.empty());
    }

    /**
     * What is asked of a batch besides its file.
     *
     * @param name what the sender calls it; null where he says nothing
     */
    record OfBatch(String name, UnitSystem units) {}

    /**
     * What is asked of a batch.
     *
     * @throws ProblemException 400 for what is no name, for other units or another parameter
     */
    static OfBatch batch(UriInfo uri) {
        Query query = new Query(uri, NAME, UNITS);
        UnitSystem units = query.units();
        List<String> taken = List.of("a line of 1 to " + BatchPlan.LONGEST_NAME + " characters");
        String name = query.one(NAME, taken);
        if (name != null
                && (name.isBlank()
                        || name.codePointCount(0, name.length()) > BatchPlan.LONGEST_NAME
                        || name.chars().anyMatch(Character::isISOControl))) {
            throw new ProblemException(ProblemReport.badQuery(NAME, StreamTypes.shortened(name), taken));
        }
        return new OfBatch(name, units == null ? UnitSystem.SI : units);
    }

    /** @throws ProblemException 400 for any parameter */
    static void none(UriInfo uri) {
        new Query(uri);
    }

    /**
     * A stretch of a list.
     *
     * @param limit items at most
     * @param after the item that stands before it; null for the list's start
     */
    record Stretch(int limit, UUID after) {}

    /**
     * The stretch of a list that is asked for.
     *
     * @throws ProblemException 400 for what is none or another parameter
     */
    static Stretch stretch(UriInfo uri) {
        return new Query(uri, LIMIT, AFTER).stretch();
    }

    private Stretch stretch() {
        String after = after();
        UUID id = after == null ? null : Ids.of(after);
        if (after != null && id == null) {
            throw new ProblemException(ProblemReport.badQuery(AFTER, after, AFTERS));
        }
        return new Stretch(limit(), id);
    }

    private int limit() {
        String limit = one(LIMIT, LIMITS);
        if (limit != null && !limit.matches("[1-9][0-9]?|" + GREATEST_LIMIT)) {
            throw new ProblemException(ProblemReport.badQuery(LIMIT, limit, LIMITS));
        }
        return limit == null ? USUAL_LIMIT : Integer.parseInt(limit);
    }

    private String after() {
        return one(AFTER, AFTERS);
    }

    /**
     * A stretch of a list whose items go by a name.
     *
     * @param after the name that stands before it; null for the list's start
     */
    record NamedStretch(int limit, PriceBookName after) {}

    /**
     * The stretch of a list of price books that is asked for.
     *
     * @throws ProblemException 400 for what is none or another parameter
     */
    static NamedStretch namedStretch(UriInfo uri) {
        Query query = new Query(uri, LIMIT, AFTER);
        String after = query.after();
        if (after != null && !PriceBookName.isName(after)) {
            throw new ProblemException(ProblemReport.badQuery(AFTER, after, List.of("a name out of the list")));
        }
        return new NamedStretch(query.limit(), after == null ? null : new PriceBookName(after));
    }

    /**
     * What is looked for in a list.
     *
     * @param text null for everything
     */
    record Search(String text, Stretch stretch) {}

    /**
     * What is looked for.
     *
     * @throws ProblemException 400 for what is none or another parameter
     */
    static Search search(UriInfo uri) {
        Query query = new Query(uri, SEARCH, LIMIT, AFTER);
        List<String> taken = List.of("a text of 1 to " + LONGEST_SEARCH + " characters");
        String text = query.one(SEARCH, taken);
        // no database keeps a character of no width and no meaning
        if (text != null && (text.isBlank() || text.length() > LONGEST_SEARCH || text.indexOf(0) >= 0)) {
            throw new ProblemException(ProblemReport.badQuery(SEARCH, text, taken));
        }
        return new Search(text, query.stretch());
    }

    /** Two revisions to be compared. */
    record Sides(int from, int to) {}

    /**
     * The revisions to be compared.
     *
     * @throws ProblemException 400 where one is missing or no number, or for another parameter
     */
    static Sides sides(UriInfo uri) {
        Query query = new Query(uri, FROM, TO);
        return new Sides(query.revision(FROM), query.revision(TO));
    }

    /**
     * How a quote is to be printed.
     *
     * @param revision null for the latest
     */
    record Print(QuoteForm form, PrintFormat format, Integer revision, UnitSystem units) {}

    /**
     * How a quote is to be printed: for the customer, as HTML, the latest revision, in SI units where nothing else is asked
     * for.
     *
     * @throws ProblemException 400 for what is none or another parameter
     */
    static Print print(UriInfo uri) {
        Query query = new Query(uri, FORM, FORMAT, REVISION, UNITS);
        UnitSystem units = query.units();
        return new Print(
                query.word(FORM, QuoteForm.values(), QuoteForm::word, QuoteForm.CUSTOMER),
                query.word(FORMAT, PrintFormat.values(), PrintFormat::word, PrintFormat.HTML),
                query.parameters.containsKey(REVISION) ? query.revision(REVISION) : null,
                units == null ? UnitSystem.SI : units);
    }

    private <T> T word(String name, T[] values, Function<T, String> words, T usual) {
        List<String> taken = Arrays.stream(values).map(words).toList();
        String given = one(name, taken);
        if (given == null) {
            return usual;
        }
        if (!taken.contains(given)) {
            throw new ProblemException(ProblemReport.badQuery(name, given, taken));
        }
        return values[taken.indexOf(given)];
    }

    private int revision(String name) {
        return number(name, "the number of a revision");
    }

    private int number(String name, String what) {
        List<String> taken = List.of(what);
        String given = one(name, taken);
        if (given == null || !given.matches("[1-9][0-9]{0,8}")) {
            throw new ProblemException(ProblemReport.badQuery(name, given == null ? "" : given, taken));
        }
        return Integer.parseInt(given);
    }

    private String one(String name, List<String> taken) {
        List<String> given = parameters.getOrDefault(name, List.of());
        if (given.size() > 1) {
            throw new ProblemException(ProblemReport.badQuery(name, String.join(",", given), taken));
        }
        return given.isEmpty() ? null : given.get(0);
    }
}
