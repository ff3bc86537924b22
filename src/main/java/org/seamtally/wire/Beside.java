package org.seamtally.wire;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a part of a request record that is no object of its own in what is sent: its fields stand beside the record's. Such a
 * record is read by {@link BesideReader}.
 */
@Target(ElementType.FIELD)
@Retention(RetentionPolicy.RUNTIME)
@interface Beside {}
