package org.seamtally.seam;

/**
 * Fifteen places on a panel from −1 to 1, every other one of them a place of Gauss's rule of seven: the sum over all is exact
 * to degree 22, and the seven, to degree 13, confirm it without a place of their own.
 *
 * <p>Places and weights: A. S. Kronrod 1965; R. Piessens and others, QUADPACK, Springer 1983; they agree with the roots of
 * Stieltjes's polynomial worked out to 60 digits.
 */
final class GaussKronrod {

    /** Places of a panel. */
    static final int PLACES = 15;

    private static final double[] HALF_PLACES = {
        0.0,
        0.207784955007898468,
        0.405845151377397167,
        0.586087235467691130,
        0.741531185599394440,
        0.864864423359769073,
        0.949107912342758525,
        0.991455371120812639
    };

    private static final double[] HALF_WEIGHTS = {
        0.209482141084727828,
        0.204432940075298892,
        0.190350578064785410,
        0.169004726639267903,
        0.140653259715525919,
        0.104790010322250184,
        0.063092092629978553,
        0.022935322010529225
    };

    /** Of the rule of seven, whose places are the even ones of the half above. */
    private static final double[] HALF_GAUSS_WEIGHTS = {
        0.417959183673469388, 0, 0.381830050505118945, 0, 0.279705391489276668, 0, 0.129484966168869693, 0
    };

    private GaussKronrod() {}

    /** The place of an index, 0 to 14, in rising order. */
    static double place(int index) {
        int half = index - PLACES / 2;
        return half < 0 ? -HALF_PLACES[-half] : HALF_PLACES[half];
    }

    /** The weight of a place. */
    static double weight(int index) {
        return HALF_WEIGHTS[Math.abs(index - PLACES / 2)];
    }

    /** The weight of a place in the rule of seven, 0 where it is none of its. */
    static double gaussWeight(int index) {
        return HALF_GAUSS_WEIGHTS[Math.abs(index - PLACES / 2)];
    }
}
