package org.seamtally.wire;

import jakarta.validation.ConstraintValidatorContext;
import org.hibernate.validator.constraintvalidation.HibernateConstraintValidatorContext;

/** What does not fit in a part of a request, said at the field to be changed. */
final class Contradictions {

    private final ConstraintValidatorContext context;
    private boolean any;

    Contradictions(ConstraintValidatorContext context) {
        this.context = context;
    }

    boolean any() {
        return any;
    }

    /**
     * Says what does not fit.
     *
     * @param field path from the part that is checked, such as {@code branch.wall}
     * @param given the field as it was sent; null where it was not
     */
    void add(String field, String key, String message, Leaf given) {
        any = true;
        HibernateConstraintValidatorContext findings = context.unwrap(HibernateConstraintValidatorContext.class);
        findings.withDynamicPayload(new Finding(key, message, given == null ? null : given.given(), null));
        ConstraintValidatorContext.ConstraintViolationBuilder builder =
                findings.buildConstraintViolationWithTemplate(key);
        ConstraintValidatorContext.ConstraintViolationBuilder.NodeBuilderCustomizableContext node = null;
        for (String name : field.split("\\.")) {
            node = node == null ? builder.addPropertyNode(name) : node.addPropertyNode(name);
        }
        node.addConstraintViolation();
    }

    /** What a constraint has to say beside where. */
    record Finding(String key, String message, String given, java.util.List<String> taken) {}
}
