package org.seamtally.wire;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** A bare number without a unit, in a range; the lower end belongs to it, the upper one unless said otherwise. */
@Constraint(validatedBy = Checks.ShareCheck.class)
@Target(ElementType.FIELD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Share {
    /** The least that is taken. */
    String min();

    /** The most that is taken. */
    String max();

    /** Whether the upper end itself is left out. */
    boolean below() default false;

    String message() default "";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};
}
