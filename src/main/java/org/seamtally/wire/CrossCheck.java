package org.seamtally.wire;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks records that check their fields against one another. */
@Constraint(validatedBy = Checks.Across.class)
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@interface CrossCheck {
    String message() default "";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};
}
