package org.seamtally.wire;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.seamtally.quantity.Dimension;

/** Money by a unit, such as "65.00/h"; not negative, at most {@link #MOST}. */
@Constraint(validatedBy = Checks.PriceCheck.class)
@Target(ElementType.FIELD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Price {

    /** No currency has so small a unit that an hour or a pound costs more; beyond it a comma was lost. */
    String MOST = "1000000000";

    /** What is priced: one of these. */
    Dimension[] value();

    String message() default "";

    Class<?>[] groups() default {};

    Class<? extends Payload>[] payload() default {};
}
