package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validation;
import jakarta.validation.Validator;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hibernate.validator.engine.HibernateConstraintViolation;
import org.hibernate.validator.messageinterpolation.ParameterMessageInterpolator;

/** Reads a request strictly and finds everything that is wrong with it, all at once. */
final class RequestReader {

    /** Violations told at most: more help nobody. */
    private static final int MOST_TOLD = 1000;

    // thread-safe and slow to make: one for the life of the program
    private static final Validator VALIDATOR = Validation.byDefaultProvider()
            .configure()
            // messages are made here: no expression language is needed
            .messageInterpolator(new ParameterMessageInterpolator())
            .buildValidatorFactory()
            .getValidator();

    private RequestReader() {}

    /**
     * Reads and checks.
     *
     * @throws RefusedException where anything is wrong
     * @throws IOException where the text could not be fetched
     */
    static <R> R read(InputStream in, Class<R> type) throws IOException, RefusedException {
        Misfits misfits = new Misfits();
        R request;
        try {
            request = Json.mapper()
                    .readerFor(type)
                    .withAttribute(Misfits.key(), misfits)
                    .readValue(in);
        } catch (JsonProcessingException e) {
            throw new RefusedException(ProblemReport.notJson(notJson(e)));
        }
        List<Violation> violations = new ArrayList<>(misfits.found());
        if (request == null && violations.isEmpty()) {
            violations.add(new Violation("", Violation.Key.MISSING, "a JSON object is due", null, null));
        }
        if (request != null) {
            Map<String, Violation> known = new HashMap<>();
            violations.forEach(violation -> known.put(violation.path(), violation));
            for (ConstraintViolation<R> found : VALIDATOR.validate(request)) {
                Violation violation = violation(found);
                // where a part has the wrong shape it is not missing besides
                if (known.putIfAbsent(violation.path(), violation) == null
                        && !isAbsentBecauseMisfit(violation, misfits.found())) {
                    violations.add(violation);
                }
            }
        }
        if (!violations.isEmpty()) {
            throw new RefusedException(ProblemReport.invalid(sorted(violations)));
        }
        return request;
    }

    /** A joint whose kind is unknown reads as nothing; it was not left out. */
    private static boolean isAbsentBecauseMisfit(Violation violation, List<Violation> misfits) {
        return violation.key().equals(Violation.Key.MISSING)
                && misfits.stream().anyMatch(misfit -> misfit.path().startsWith(violation.path() + "."));
    }

    private static Violation violation(ConstraintViolation<?> found) {
        String path = found.getPropertyPath().toString().replace(".<list element>", "");
        Object constraint = found.getConstraintDescriptor().getAnnotation();
        if (constraint instanceof NotNull) {
            return new Violation(path, Violation.Key.MISSING, "this is needed", null, null);
        }
        if (constraint instanceof Size size) {
            int given = ((List<?>) found.getInvalidValue()).size();
            return new Violation(
                    path,
                    given < size.min() ? Violation.Key.EMPTY : Violation.Key.TOO_MANY,
                    size.min() + " to " + size.max() + " of them are taken",
                    given + " of them",
                    null);
        }
        Contradictions.Finding finding = ((HibernateConstraintViolation<?>)
                        found.unwrap(HibernateConstraintViolation.class))
                .getDynamicPayload(Contradictions.Finding.class);
        return new Violation(path, finding.key(), finding.message(), finding.given(), finding.taken());
    }

    private static Violation notJson(JsonProcessingException e) {
        boolean deep = e instanceof StreamConstraintsException && e.getMessage().contains("nesting");
        String where = where(e.getLocation());
        if (deep) {
            return new Violation(
                    "", Violation.Key.TOO_DEEP, "nested at most " + Json.DEEPEST + " levels deep" + where, null, null);
        }
        // the first line alone: what follows speaks of the parser's own classes
        String message = e.getOriginalMessage() == null
                ? ""
                : e.getOriginalMessage().lines().findFirst().orElse("");
        String told = message.startsWith("Duplicate field") || message.startsWith("Duplicate Object property")
                ? "a field stands twice" + where
                : "the text breaks off or is no JSON" + where;
        return new Violation(
                "",
                message.startsWith("Duplicate") ? Violation.Key.DUPLICATE : Violation.Key.NOT_JSON,
                told,
                null,
                null);
    }

    private static String where(JsonLocation location) {
        return location == null || location.getLineNr() < 1
                ? ""
                : ", at line " + location.getLineNr() + ", column " + location.getColumnNr();
    }

    /** In the order of their paths, numbers by their value, so that the same faults are always told alike. */
    static List<Violation> sorted(List<Violation> violations) {
        return violations.stream()
                .sorted(Comparator.comparing((Violation v) -> sortable(v.path()))
                        .thenComparing(Violation::key))
                .limit(MOST_TOLD)
                .toList();
    }

    private static String sortable(String path) {
        StringBuilder padded = new StringBuilder(path.length() + 8);
        int digits = 0;
        for (int i = path.length() - 1; i >= 0; i--) {
            char c = path.charAt(i);
            if (Character.isDigit(c)) {
                digits++;
            } else if (digits > 0) {
                padded.append("0".repeat(Math.max(0, 8 - digits)));
                digits = 0;
            }
            padded.append(c);
        }
        return padded.reverse().toString();
    }
}
