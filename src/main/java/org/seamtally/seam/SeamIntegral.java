package org.seamtally.seam;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Length, deposit and the run of the dihedral angle along a root line.
 *
 * <p>The deposit follows Pappus's theorem for a section that changes along a curved line: V = ∮A ds − ∮M·dT. On a closed
 * stretch the integrand is smooth and periodic, and the trapezoid rule converges geometrically (Trefethen and Weideman,
 * SIAM Review 56, 2014, 385). What turns into a groove past 135° is added apart, on its own stretch of the line, so that
 * the corner in the rise there costs no accuracy. Open stretches are cut into panels with Gauss–Legendre points.
 */
public final class SeamIntegral {

    /**
     * Two successive sums that agree this well end the doubling: where convergence is geometric the error of the second
     * is about the square of the difference, far below the 1e-9 that is promised.
     */
    private static final double AGREEMENT = 3e-7;

    /** The first number of points round a closed stretch: enough to see every turn of the dihedral angle's run. */
    private static final int FIRST_POINTS = 32;

    /** Tubes 1e-24 apart need 1024 points; twice that has never been met. */
    private static final int MOST_POINTS = 4096;

    /** Points of a Gauss–Legendre panel: exact to degree 47, so that a panel or two settle an analytic piece. */
    private static final GaussIntegrator PANEL = new GaussIntegratorFactory().legendre(24);

    /** Panels at most on one piece; eight have been seen. */
    private static final int MOST_PANELS = 128;

    private static final double COS_WIDEST_FILLET = Math.cos(DepositSection.WIDEST_FILLET);

    private SeamIntegral() {}

    /** Adds up a weld along its root line. */
    public static Seam along(RootLine line, DepositSection section) {
        double length = 0;
        double volume = 0;
        double grooveLength = 0;
        double least = Math.PI;
        double greatest = 0;
        for (Stretch stretch : line.stretches()) {
            Run run = Run.of(stretch, section);
            length += run.length;
            volume += run.volume;
            least = Math.min(least, run.leastDihedral());
            greatest = Math.max(greatest, run.greatestDihedral());
            for (Interval groove : run.wider(COS_WIDEST_FILLET)) {
                grooveLength += panels(stretch, groove, Station::speed);
                volume += panels(stretch, groove, section::grooveDeposit);
            }
        }
        for (Station corner : line.corners()) {
            volume += section.deposit(corner) + section.grooveDeposit(corner);
        }
        return new Seam(
                length,
                volume,
                Optional.of(new Seam.Course(
                        least, greatest, leastThroat(section, least, greatest), Math.min(1, grooveLength / length))));
    }

    /**
     * The share of a seam's length whose dihedral angle is wider than a limit.
     *
     * @param dihedral the limit, rad
     * @return 0 to 1
     */
    public static double shareWiderThan(RootLine line, DepositSection section, double dihedral) {
        double length = 0;
        double wider = 0;
        for (Stretch stretch : line.stretches()) {
            Run run = Run.of(stretch, section);
            length += run.length;
            for (Interval interval : run.wider(Math.cos(dihedral))) {
                wider += panels(stretch, interval, Station::speed);
            }
        }
        return Math.min(1, wider / length);
    }

    /**
     * The throat rises to at most one peak as the dihedral angle opens, then falls: so the least stands at an end of the
     * run. A hollow face takes off more the wider it opens, and a gap makes the throat the lesser of two such curves.
     */
    private static OptionalDouble leastThroat(DepositSection section, double least, double greatest) {
        if (least > DepositSection.WIDEST_FILLET) {
            return OptionalDouble.empty();
        }
        double widest = Math.min(greatest, DepositSection.WIDEST_FILLET);
        return OptionalDouble.of(Math.min(section.effectiveThroat(least), section.effectiveThroat(widest)));
    }

    /** A piece of a stretch by its parameter; it may run past the end of a closed one. */
    private record Interval(double from, double to) {

        double at(double share) {
            return from + (to - from) * share;
        }
    }

    /** One stretch, added up, with the places where the dihedral angle turns back. */
    private static final class Run {

        private final Stretch stretch;
        private double length;
        private double volume;
        /** Parameters in order between which the dihedral angle runs one way only. */
        private final List<Double> turns = new ArrayList<>();

        private double leastCos = 1;
        private double greatestCos = -1;

        private Run(Stretch stretch) {
            this.stretch = stretch;
        }

        static Run of(Stretch stretch, DepositSection section) {
            Run run = new Run(stretch);
            double[] places = stretch.closed() ? run.addRound(section) : run.addAcross(section);
            run.findTurns(places);
            return run;
        }

        /** The trapezoid rule round a closed stretch, doubled until it has settled. */
        private double[] addRound(DepositSection section) {
            double end = stretch.end();
            double speeds = 0;
            double deposits = 0;
            double lastLength = Double.NaN;
            double lastVolume = Double.NaN;
            int points = FIRST_POINTS;
            for (int i = 0; i < points; i++) {
                Station at = stretch.at(end * i / points);
                speeds += at.speed();
                deposits += section.deposit(at);
            }
            while (true) {
                length = speeds * end / points;
                volume = deposits * end / points;
                if (agree(length, lastLength) && agree(volume, lastVolume) || points >= MOST_POINTS) {
                    break;
                }
                lastLength = length;
                lastVolume = volume;
                for (int i = 0; i < points; i++) {
                    Station at = stretch.at(end * (2 * i + 1) / (2 * points));
                    speeds += at.speed();
                    deposits += section.deposit(at);
                }
                points *= 2;
            }
            double[] places = new double[points + 1];
            for (int i = 0; i <= points; i++) {
                places[i] = end * i / points;
            }
            return places;
        }

        private double[] addAcross(DepositSection section) {
            Interval whole = new Interval(0, stretch.end());
            length = panels(stretch, whole, Station::speed);
            volume = panels(stretch, whole, section::deposit);
            double[] places = new double[FIRST_POINTS + 1];
            for (int i = 0; i <= FIRST_POINTS; i++) {
                places[i] = whole.at((double) i / FIRST_POINTS);
            }
            return places;
        }

        private void findTurns(double[] places) {
            turns.add(places[0]);
            Station before = at(places[0]);
            see(before);
            for (int i = 1; i < places.length; i++) {
                Station after = at(places[i]);
                see(after);
                if (after.dihedralDrift() == 0) {
                    turns.add(places[i]);
                } else if (before.dihedralDrift() * after.dihedralDrift() < 0) {
                    double turn = solve(p -> at(p).dihedralDrift(), places[i - 1], places[i]);
                    see(stretch.at(turn));
                    turns.add(turn);
                }
                before = after;
            }
            turns.add(places[places.length - 1]);
        }

        /** A station, a hair inside an open stretch's ends: in a corner itself there is none. */
        private Station at(double parameter) {
            double hair = stretch.closed() ? 0 : 1e-9 * stretch.end();
            return stretch.at(Math.min(Math.max(parameter, hair), stretch.end() - hair));
        }

        private void see(Station at) {
            leastCos = Math.min(leastCos, at.cosDihedral());
            greatestCos = Math.max(greatestCos, at.cosDihedral());
        }

        double leastDihedral() {
            return Math.acos(Math.min(1, greatestCos));
        }

        double greatestDihedral() {
            return Math.acos(Math.max(-1, leastCos));
        }

        /** The pieces on which the cosine of the dihedral angle is below a limit. */
        List<Interval> wider(double cosLimit) {
            if (leastCos >= cosLimit) {
                return List.of();
            }
            List<Interval> found = new ArrayList<>();
            for (int i = 1; i < turns.size(); i++) {
                double from = turns.get(i - 1);
                double to = turns.get(i);
                double first = at(from).cosDihedral() - cosLimit;
                double last = at(to).cosDihedral() - cosLimit;
                if (first < 0 && last < 0) {
                    found.add(new Interval(from, to));
                } else if (first < 0 || last < 0) {
                    double crossing = first * last == 0
                            ? (first == 0 ? from : to)
                            : solve(p -> at(p).cosDihedral() - cosLimit, from, to);
                    found.add(first < 0 ? new Interval(from, crossing) : new Interval(crossing, to));
                }
            }
            return found;
        }
    }

    private static boolean agree(double now, double before) {
        return Math.abs(now - before) <= AGREEMENT * Math.abs(now);
    }

    /** An integral over a piece of a stretch, its panels halved until it has settled. */
    private static double panels(Stretch stretch, Interval piece, ToDoubleFunction<Station> integrand) {
        double before = Double.NaN;
        for (int panels = 1; ; panels *= 2) {
            double sum = 0;
            double half = (piece.to - piece.from) / panels / 2;
            for (int panel = 0; panel < panels; panel++) {
                double middle = piece.from + (2 * panel + 1) * half;
                for (int i = 0; i < PANEL.getNumberOfPoints(); i++) {
                    sum += PANEL.getWeight(i) * integrand.applyAsDouble(stretch.at(middle + half * PANEL.getPoint(i)));
                }
            }
            double now = sum * half;
            if (agree(now, before) || now == 0 || panels >= MOST_PANELS) {
                return now;
            }
            before = now;
        }
    }

    private static double solve(UnivariateFunction function, double from, double to) {
        // 1e-13 of a parameter of order one; the solver needs some ten evaluations, a hundred are never met
        return new BracketingNthOrderBrentSolver(1e-14, 1e-13, 5).solve(100, function, from, to);
    }
}
