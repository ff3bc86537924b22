package org.seamtally.catalogue;

import java.util.OptionalDouble;

/**
 * What a standard allows of one element.
 *
 * @param least mass per cent, empty where the standard asks for none
 * @param greatest mass per cent, empty where the standard names no maximum
 */
public record Limits(OptionalDouble least, OptionalDouble greatest) {

    /** @throws IllegalArgumentException where a bound is outside 0 to 100 or the least is above the greatest */
    public Limits {
        double low = least.orElse(0);
        double high = greatest.orElse(100);
        if (!(low >= 0 && low <= high && high <= 100)) {
            throw new IllegalArgumentException("from " + low + " % to " + high + " % is no range of an element");
        }
    }

    /** Whether a share lies within, the bounds included. */
    public boolean admit(double massPercent) {
        return massPercent >= least.orElse(0) && massPercent <= greatest.orElse(100);
    }
}
