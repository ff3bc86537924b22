package org.seamtally.wire;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.seamtally.quantity.Dimension;

/** A quantity with a unit, in a range; the ends belong to it. */
@Constraint(validatedBy = Checks.WithinCheck.class)
@Target({ElementType.FIELD, ElementType.ANNOTATION_TYPE})
@Retention(RetentionPolicy.RUNTIME)
public @interface Within {
    /** What it measures. */
    Dimension value();

    /** The least that is taken, as it would be sent. */
    String min();

    /** The most that is taken, as it would be sent. */
    String max();

    String message() default "";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};
}
