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

    /** The same for shares of a length, of which six digits are enough: exact to degree 11. */
    private static final GaussIntegrator SHARE_PANEL = new GaussIntegratorFactory().legendre(6);

    /** Panels at most on one piece; eight have been seen. */
    private static final int MOST_PANELS = 128;

    private static final double COS_WIDEST_FILLET = Math.cos(DepositSection.WIDEST_FILLET);

    private SeamIntegral() {}

    /** Adds up a weld along its root line. */
    public static Seam along(RootLine line, DepositSection section) {
        return byZones(line, section).seam();
    }

    /**
     * A weld added up, and how its length is shared out between zones of the dihedral angle.
     *
     * @param seam the weld
     * @param shares one more than there are limits, together 1: up to the first limit, from each limit to the next, and
     *     above the last; where the angle stands still on a limit that length belongs below it
     */
    public record ByZones(Seam seam, List<Double> shares) {

        /** Copies the list. */
        public ByZones {
            shares = List.copyOf(shares);
        }
    }

    /**
     * Adds up a weld along its root line and shares its length out between the zones that some limits of the dihedral
     * angle make, in one pass. The limits are met exactly, by solving for the places where the angle passes them.
     *
     * @param limits rad, in rising order
     */
    public static ByZones byZones(RootLine line, DepositSection section, double... limits) {
        double length = 0;
        double volume = 0;
        double grooveLength = 0;
        double least = Math.PI;
        double greatest = 0;
        double[] wider = new double[limits.length];
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
            run.addLengthsWider(limits, wider);
        }
        for (Station corner : line.corners()) {
            volume += section.deposit(corner) + section.grooveDeposit(corner);
        }
        Seam seam = new Seam(
                length,
                volume,
                Optional.of(new Seam.Course(
                        least, greatest, leastThroat(section, least, greatest), Math.min(1, grooveLength / length))));
        List<Double> shares = new ArrayList<>();
        double above = 1;
        for (double zone : wider) {
            double next = Math.min(above, zone / length);
            shares.add(above - next);
            above = next;
        }
        shares.add(above);
        return new ByZones(seam, shares);
    }

    /**
     * The share of a seam's length whose dihedral angle is wider than a limit.
     *
     * @param dihedral the limit, rad
     * @return 0 to 1
     */
    static double shareWiderThan(RootLine line, DepositSection section, double dihedral) {
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
            if (stretch.closed()) {
                run.findTurns(run.addRound(section));
            } else {
                run.addAcross(section);
                run.findTurns(run.across());
            }
            return run;
        }

        /**
         * The trapezoid rule round a closed stretch, doubled until it has settled.
         *
         * @return the stations, the first one again at the end
         */
        private Station[] addRound(DepositSection section) {
            double end = stretch.end();
            double speeds = 0;
            double deposits = 0;
            double lastLength = Double.NaN;
            double lastVolume = Double.NaN;
            int points = FIRST_POINTS;
            Station[] stations = new Station[points + 1];
            for (int i = 0; i < points; i++) {
                stations[i] = stretch.at(end * i / points);
                speeds += stations[i].speed();
                deposits += section.deposit(stations[i]);
            }
            while (true) {
                length = speeds * end / points;
                volume = deposits * end / points;
                if (agree(length, lastLength) && agree(volume, lastVolume) || points >= MOST_POINTS) {
                    break;
                }
                lastLength = length;
                lastVolume = volume;
                Station[] denser = new Station[2 * points + 1];
                for (int i = 0; i < points; i++) {
                    denser[2 * i] = stations[i];
                    denser[2 * i + 1] = stretch.at(end * (2 * i + 1) / (2 * points));
                    speeds += denser[2 * i + 1].speed();
                    deposits += section.deposit(denser[2 * i + 1]);
                }
                stations = denser;
                points *= 2;
            }
            stations[points] = stations[0];
            return stations;
        }

        private void addAcross(DepositSection section) {
            Interval whole = new Interval(0, stretch.end());
            length = panels(stretch, whole, Station::speed);
            volume = panels(stretch, whole, section::deposit);
        }

        private Station[] across() {
            Station[] stations = new Station[FIRST_POINTS + 1];
            for (int i = 0; i <= FIRST_POINTS; i++) {
                stations[i] = at(stretch.end() * i / FIRST_POINTS);
            }
            return stations;
        }

        /** @param stations evenly spaced, from the stretch's start to its end */
        private void findTurns(Station[] stations) {
            int last = stations.length - 1;
            double step = stretch.end() / last;
            turns.add(0.0);
            see(stations[0]);
            for (int i = 1; i <= last; i++) {
                Station before = stations[i - 1];
                Station after = stations[i];
                see(after);
                if (after.dihedralDrift() == 0) {
                    turns.add(step * i);
                } else if (before.dihedralDrift() * after.dihedralDrift() < 0) {
                    double turn = solve(p -> at(p).dihedralDrift(), step * (i - 1), step * i);
                    see(stretch.at(turn));
                    turns.add(turn);
                }
            }
            turns.add(stretch.end());
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

        /**
         * Adds how much of its length is wider than each limit. Between two turns the angle runs one way only, so that its
         * passages through the limits part the run into pieces, each integrated once.
         */
        void addLengthsWider(double[] limits, double[] wider) {
            for (int i = 1; i < turns.size(); i++) {
                double from = turns.get(i - 1);
                double to = turns.get(i);
                double first = at(from).cosDihedral();
                double last = at(to).cosDihedral();
                // from the wide end: each piece is wider than all limits that have not been passed yet
                double wideEnd = first < last ? from : to;
                double narrowEnd = first < last ? to : from;
                double start = wideEnd;
                double lengthSoFar = 0;
                for (int k = limits.length - 1; k >= 0; k--) {
                    double cosLimit = Math.cos(limits[k]);
                    if (Math.min(first, last) >= cosLimit) {
                        continue;
                    }
                    double end = Math.max(first, last) <= cosLimit
                            ? narrowEnd
                            : solve(
                                    p -> at(p).cosDihedral() - cosLimit,
                                    Math.min(start, narrowEnd),
                                    Math.max(start, narrowEnd));
                    if (end != start) {
                        lengthSoFar += panels(
                                stretch,
                                new Interval(Math.min(start, end), Math.max(start, end)),
                                Station::speed,
                                SHARE_PANEL);
                    }
                    wider[k] += lengthSoFar;
                    start = end;
                }
            }
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
        return panels(stretch, piece, integrand, PANEL);
    }

    private static double panels(
            Stretch stretch, Interval piece, ToDoubleFunction<Station> integrand, GaussIntegrator rule) {
        double before = Double.NaN;
        for (int panels = 1; ; panels *= 2) {
            double sum = 0;
            double half = (piece.to - piece.from) / panels / 2;
            for (int panel = 0; panel < panels; panel++) {
                double middle = piece.from + (2 * panel + 1) * half;
                for (int i = 0; i < rule.getNumberOfPoints(); i++) {
                    sum += rule.getWeight(i) * integrand.applyAsDouble(stretch.at(middle + half * rule.getPoint(i)));
                }
            }
            double now = sum * half;
            if (agree(now, before) || now == 0 || panels >= MOST_PANELS) {
                return now;
            }
            before = now;
        }
    }

    /** Length of a piece of a stretch, six digits of it, m. */
    static double length(Stretch stretch, double from, double to) {
        return panels(stretch, new Interval(from, to), Station::speed, SHARE_PANEL);
    }

    private static double solve(UnivariateFunction function, double from, double to) {
        // 1e-13 of a parameter of order one; the solver needs some ten evaluations, a hundred are never met
        return new BracketingNthOrderBrentSolver(1e-14, 1e-13, 5).solve(100, function, from, to);
    }
}
