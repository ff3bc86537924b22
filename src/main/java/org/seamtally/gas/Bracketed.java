package org.seamtally.gas;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/** The root of a function that changes its sign between two places. */
final class Bracketed {

    /** Relative accuracy of a root: some thousand times the rounding of a double, and far below any datum of a hose. */
    private static final double RELATIVE = 1e-13;

    /** A root of 0 has no relative accuracy: Hipparchus asks for an absolute one, which shall not matter. */
    private static final double ABSOLUTE = 1e-300;

    /** Nor is a small value of the function an end: flows in kg/s are small numbers. */
    private static final double FUNCTION = 1e-300;

    /** Brent's method of this order ends within some ten evaluations; a hundred says that something else is wrong. */
    private static final int EVALUATIONS = 200;

    private static final int ORDER = 5;

    private Bracketed() {}

    /**
     * The root between two places, either of which may be one itself.
     *
     * @throws org.hipparchus.exception.MathIllegalArgumentException where the signs at both places are the same
     */
    static double root(UnivariateFunction function, double from, double to) {
        return solve(function, from, to, AllowedSolution.ANY_SIDE);
    }

    /** The same, from the side on which the function is 0 or above. */
    static double rootFromAbove(UnivariateFunction function, double from, double to) {
        return solve(function, from, to, AllowedSolution.ABOVE_SIDE);
    }

    private static double solve(UnivariateFunction function, double from, double to, AllowedSolution side) {
        return new BracketingNthOrderBrentSolver(RELATIVE, ABSOLUTE, FUNCTION, ORDER)
                .solve(EVALUATIONS, function, from, to, side);
    }
}
