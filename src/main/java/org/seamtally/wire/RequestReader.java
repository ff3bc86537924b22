package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validation;
import jakarta.validation.Validator;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hibernate.validator.engine.HibernateConstraintViolation;
import org.hibernate.validator.messageinterpolation.ParameterMessageInterpolator;

/** Reads a request strictly and finds everything that is wrong with it, all at once. */
final class RequestReader {

    /** Violations told at most: more help nobody. */
    static final int MOST_TOLD = 1000;

    private static final Pattern IN_JOINT = Pattern.compile("frame\\.joints\\[([0-9]{1,9})]");

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
        R request = parse(in, type, misfits);
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
                        && !isAbsentBecauseMisfit(found, violation, misfits.found())) {
                    violations.add(violation);
                }
            }
        }
        if (!violations.isEmpty()) {
            throw refused(request, violations);
        }
        return request;
    }

    private static <R> R parse(InputStream in, Class<R> type, Misfits misfits) throws IOException, RefusedException {
        try (JsonParser parser = Json.mapper().createParser(in)) {
            try {
                return Json.mapper()
                        .readerFor(type)
                        .withAttribute(Misfits.key(), misfits)
                        .readValue(parser);
            } catch (JsonProcessingException e) {
                JsonLocation told = e.getLocation();
                // past a limit the parser does not say where
                JsonLocation place = told == null || told.getLineNr() < 1 ? parser.currentLocation() : told;
                throw new RefusedException(ProblemReport.notJson(notJson(e, place)));
            }
        } catch (CharConversionException e) {
            throw new RefusedException(ProblemReport.notJson(notJson(Violation.Key.NOT_JSON, "the text is not UTF-8")));
        }
    }

    /** A joint whose kind is unknown reads as nothing, and so does a field of another shape: neither was left out. */
    private static boolean isAbsentBecauseMisfit(
            ConstraintViolation<?> found, Violation violation, List<Violation> misfits) {
        if (!violation.key().equals(Violation.Key.MISSING)) {
            return false;
        }
        // what a part lacks is not known while another of its fields is a misfit
        boolean crossed = found.getConstraintDescriptor().getAnnotation() instanceof CrossCheck;
        return misfits.stream()
                .anyMatch(misfit -> misfit.path().startsWith(violation.path() + ".")
                        || crossed && holder(misfit.path()).equals(holder(violation.path())));
    }

    private static String holder(String path) {
        return path.substring(0, Math.max(0, path.lastIndexOf('.')));
    }

    /** A path without the parts that are no objects of their own in what is sent. */
    private static String asSent(String path, Class<?> request) {
        return Arrays.stream(request.getDeclaredFields())
                .filter(field -> field.isAnnotationPresent(Beside.class))
                .map(field -> field.getName() + ".")
                .filter(path::startsWith)
                .findFirst()
                .map(part -> path.substring(part.length()))
                .orElse(path);
    }

    private static Violation violation(ConstraintViolation<?> found) {
        String path =
                asSent(found.getPropertyPath().toString().replace(".<list element>", ""), found.getRootBeanClass());
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

    private static Violation notJson(JsonProcessingException e, JsonLocation place) {
        String where = ", at line " + place.getLineNr() + ", column " + place.getColumnNr();
        Throwable limit = e;
        while (limit != null && !(limit instanceof StreamConstraintsException)) {
            limit = limit.getCause();
        }
        // the messages alone tell which; what else they say speaks of the parser's own classes
        if (limit != null && limit.getMessage().contains("nesting")) {
            return notJson(Violation.Key.TOO_DEEP, "nested at most " + Json.DEEPEST + " levels deep" + where);
        }
        if (limit != null) {
            return notJson(
                    Violation.Key.TOO_LONG, "a number or a field's name is longer than any that is read" + where);
        }
        return e.getOriginalMessage().startsWith("Duplicate")
                ? notJson(Violation.Key.DUPLICATE, "a field stands twice" + where)
                : notJson(Violation.Key.NOT_JSON, "the text breaks off or is no JSON" + where);
    }

    private static Violation notJson(String key, String message) {
        return new Violation("", key, message, null, null);
    }

    /** Refuses a request for what is wrong with it: what is wrong with a joint names the mark of that joint. */
    static RefusedException refused(Object request, List<Violation> violations) {
        List<JointRequest> joints = joints(request);
        return new RefusedException(ProblemReport.invalid(sorted(violations).stream()
                .map(violation -> violation.on(mark(joints, violation.path())))
                .toList()));
    }

    private static List<JointRequest> joints(Object request) {
        Object estimate = request instanceof QuoteRequest quote ? quote.estimate() : request;
        FrameRequest frame = estimate instanceof FrameEstimateRequest asked ? asked.frame() : null;
        return frame == null || frame.joints() == null ? List.of() : frame.joints();
    }

    /** @return null where the path leads to no joint, or to one that was sent without a mark */
    private static String mark(List<JointRequest> joints, String path) {
        Matcher place = IN_JOINT.matcher(path);
        if (!place.lookingAt()) {
            return null;
        }
        int index = Integer.parseInt(place.group(1));
        JointRequest joint = index < joints.size() ? joints.get(index) : null;
        Leaf mark = joint == null ? null : joint.mark;
        return mark == null || mark.kind() != Leaf.Kind.TEXT ? null : Quoted.cut(mark.text());
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
