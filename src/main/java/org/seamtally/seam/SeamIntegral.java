package org.seamtally.seam;

import java.util.ArrayList;
import java.util.Arrays;
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
     * Two successive sums that agree this well end the refining: where convergence is geometric the error of the second
     * is about the square of the difference, far below the 1e-9 that is promised.
     */
    private static final double AGREEMENT = 3e-7;

    /** The first number of points round a closed stretch: where the tubes differ much the next doubling confirms it. */
    private static final int FIRST_POINTS = 16;

    /** Enough points to see every turn of the dihedral angle's run. */
    private static final int POINTS_TO_SEE = 32;

    /** Tubes 1e-24 apart need 1024 points; twice that has never been met. */
    private static final int MOST_POINTS = 4096;

    /** Points of a Gauss–Legendre panel, exact to degree 19, and of the one that confirms it, to degree 39. */
    private static final GaussIntegrator PANEL = new GaussIntegratorFactory().legendre(10);

    private static final GaussIntegrator CONFIRMING_PANEL = new GaussIntegratorFactory().legendre(20);

    /** The panel for pieces of a length: exact to degree 15. */
    private static final GaussIntegrator SHARE_PANEL = new GaussIntegratorFactory().legendre(8);

    /** Shares that add up to the length this well are taken; else their panels are halved. */
    private static final double SHARES_AGREE = 1e-9;

    /** Panels at most on one piece; eight have been seen. */
    private static final int MOST_PANELS = 128;

    /** A passage through a limit is met when the next step would be shorter than this share of the stretch. */
    private static final double PASSAGE_MET = 1e-14;

    /** Three steps are usual; where the angle turns back at the very limit each halves the rest. */
    private static final int MOST_STEPS = 60;

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
            Sums sums = run.sums.plus(run.grooves(section));
            length += sums.length;
            volume += sums.volume;
            grooveLength += run.grooveLength;
            least = Math.min(least, run.leastDihedral());
            greatest = Math.max(greatest, run.greatestDihedral());
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

    /** A piece of a stretch by its parameter. */
    private record Interval(double from, double to) {}

    /** Length and volume of a piece, added up together: each place is worked out once. */
    private record Sums(double length, double volume) {

        static final Sums NONE = new Sums(0, 0);

        Sums plus(Sums other) {
            return new Sums(length + other.length, volume + other.volume);
        }

        Sums times(double factor) {
            return new Sums(length * factor, volume * factor);
        }

        boolean agrees(Sums before) {
            return agree(length, before.length) && agree(volume, before.volume);
        }

        private static boolean agree(double now, double before) {
            return Math.abs(now - before) <= AGREEMENT * Math.abs(now);
        }
    }

    /**
     * One stretch, added up, with the places where the dihedral angle turns back. Of a stretch whose second half mirrors
     * the first only that one is looked at, and counts twice.
     */
    private static final class Run {

        private final Stretch stretch;
        private final double span;
        private final double times;
        private Sums sums;
        private double grooveLength;
        /** Evenly spaced over the span. */
        private Station[] stations;
        /** Parameters in order between which the dihedral angle runs one way only. */
        private final List<Double> turns = new ArrayList<>();

        private double leastCos = 1;
        private double greatestCos = -1;

        private Run(Stretch stretch) {
            this.stretch = stretch;
            this.times = stretch.mirrored() ? 2 : 1;
            this.span = stretch.end() / times;
        }

        static Run of(Stretch stretch, DepositSection section) {
            Run run = new Run(stretch);
            if (stretch.closed()) {
                run.addRound(section);
            } else {
                run.addAcross(section);
            }
            run.findTurns();
            return run;
        }

        /** The trapezoid rule round a closed stretch, doubled until it has settled. */
        private void addRound(DepositSection section) {
            int steps = (int) (FIRST_POINTS / times);
            stations = new Station[steps + 1];
            // of half the way round, the two ends count half each; of the whole, they are one place
            for (int i = 0; i < steps; i++) {
                stations[i] = stretch.at(span * i / steps);
            }
            stations[steps] = stretch.mirrored() ? stretch.at(span) : stations[0];
            Sums inner = between(stations, section, 1, 1);
            Sums ends = sum(stations[0], section)
                    .plus(sum(stations[steps], section))
                    .times(0.5);
            Sums last;
            Sums now = inner.plus(ends).times(span * times / steps);
            do {
                last = now;
                Station[] denser = new Station[2 * steps + 1];
                for (int i = 0; i < steps; i++) {
                    denser[2 * i] = stations[i];
                    denser[2 * i + 1] = stretch.at(span * (2 * i + 1) / (2 * steps));
                }
                denser[2 * steps] = stations[steps];
                stations = denser;
                steps *= 2;
                inner = inner.plus(between(stations, section, 1, 2));
                now = inner.plus(ends).times(span * times / steps);
            } while (!(now.agrees(last) && steps * times >= POINTS_TO_SEE) && steps * times < MOST_POINTS);
            sums = now;
        }

        private static Sums between(Station[] stations, DepositSection section, int first, int step) {
            double length = 0;
            double volume = 0;
            for (int i = first; i < stations.length - 1; i += step) {
                length += stations[i].speed();
                volume += section.deposit(stations[i]);
            }
            return new Sums(length, volume);
        }

        private static Sums sum(Station at, DepositSection section) {
            return new Sums(at.speed(), section.deposit(at));
        }

        private void addAcross(DepositSection section) {
            sums = panels(new Interval(0, span), section::deposit).times(times);
            int steps = (int) (POINTS_TO_SEE / times);
            stations = new Station[steps + 1];
            for (int i = 0; i <= steps; i++) {
                stations[i] = at(span * i / steps);
            }
        }

        private void findTurns() {
            int last = stations.length - 1;
            double step = span / last;
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
            turns.add(span);
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

        /** What a groove's fuller face adds where the angle is wider than a fillet's; its length is noted. */
        Sums grooves(DepositSection section) {
            Sums all = Sums.NONE;
            for (Interval groove : wider(COS_WIDEST_FILLET)) {
                all = all.plus(panels(groove, section::grooveDeposit).times(times));
            }
            grooveLength = all.length;
            return new Sums(0, all.volume);
        }

        /**
         * Adds how much of its length is wider than each limit. Between two turns the angle runs one way only, so that its
         * passages through the limits part the run into pieces, each integrated once.
         */
        void addLengthsWider(double[] limits, double[] wider) {
            if (limits.length == 0) {
                return;
            }
            double[] lengths = new double[limits.length];
            int panels = 1;
            while (Math.abs(lengthsWider(limits, lengths, panels) - sums.length) > SHARES_AGREE * sums.length
                    && panels < MOST_PANELS) {
                panels *= 2;
            }
            for (int k = 0; k < limits.length; k++) {
                wider[k] += lengths[k];
            }
        }

        /**
         * @param lengths where they are written to
         * @return the length of all pieces
         */
        private double lengthsWider(double[] limits, double[] lengths, int panels) {
            Arrays.fill(lengths, 0);
            double all = 0;
            for (int i = 1; i < turns.size(); i++) {
                double from = turns.get(i - 1);
                double to = turns.get(i);
                double first = at(from).cosDihedral();
                double last = at(to).cosDihedral();
                // from the wide end: each piece is wider than all limits that have not been passed yet
                double narrowEnd = first < last ? to : from;
                double start = first < last ? from : to;
                double lengthSoFar = 0;
                for (int k = limits.length - 1; k >= 0; k--) {
                    double cosLimit = Math.cos(limits[k]);
                    if (Math.min(first, last) >= cosLimit) {
                        continue;
                    }
                    double end = Math.max(first, last) <= cosLimit ? narrowEnd : passage(cosLimit, start, narrowEnd);
                    lengthSoFar += lengthOf(start, end, panels);
                    lengths[k] += lengthSoFar;
                    start = end;
                }
                all += lengthSoFar + lengthOf(start, narrowEnd, panels);
            }
            return all;
        }

        private double lengthOf(double start, double end, int panels) {
            if (start == end) {
                return 0;
            }
            return gauss(stretch, new Interval(Math.min(start, end), Math.max(start, end)), panels) * times;
        }

        /** The pieces on which the cosine of the dihedral angle is below a limit. */
        private List<Interval> wider(double cosLimit) {
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
                            : passage(cosLimit, first < 0 ? from : to, first < 0 ? to : from);
                    found.add(first < 0 ? new Interval(from, crossing) : new Interval(crossing, to));
                }
            }
            return found;
        }

        /**
         * Where the cosine of the dihedral angle passes a limit, by Newton's steps on its known rate, kept between the two
         * stations that it passes the limit between.
         *
         * @param wide a place where it is below the limit
         * @param narrow one where it is not; between the two it runs one way only
         */
        private double passage(double cosLimit, double wide, double narrow) {
            double below = wide;
            double above = narrow;
            double step = span / (stations.length - 1);
            int way = narrow > wide ? 1 : -1;
            for (int i = (int) Math.floor(wide / step) + (way > 0 ? 1 : 0);
                    way * (narrow - i * step) > 0 && i >= 0 && i < stations.length;
                    i += way) {
                if (way * (i * step - wide) > 0) {
                    if (stations[i].cosDihedral() >= cosLimit) {
                        above = i * step;
                        break;
                    }
                    below = i * step;
                }
            }
            double at = (below + above) / 2;
            for (int steps = 0; steps < MOST_STEPS; steps++) {
                Station here = at(at);
                double over = here.cosDihedral() - cosLimit;
                if (over == 0) {
                    return at;
                }
                if (over < 0) {
                    below = at;
                } else {
                    above = at;
                }
                double next = at - over / here.dihedralDrift();
                if (!(next > Math.min(below, above) && next < Math.max(below, above))) {
                    next = (below + above) / 2;
                }
                if (Math.abs(next - at) <= PASSAGE_MET * span) {
                    return next;
                }
                at = next;
            }
            return at;
        }

        /** An integral over a piece, refined until it has settled. */
        private Sums panels(Interval piece, ToDoubleFunction<Station> deposit) {
            Sums before = gauss(stretch, PANEL, piece, 1, deposit);
            for (int panels = 1; ; panels *= 2) {
                Sums now = gauss(stretch, CONFIRMING_PANEL, piece, panels, deposit);
                if (now.agrees(before) || panels >= MOST_PANELS) {
                    return now;
                }
                before = now;
            }
        }
    }

    private static Sums gauss(
            Stretch stretch, GaussIntegrator rule, Interval piece, int panels, ToDoubleFunction<Station> deposit) {
        double length = 0;
        double volume = 0;
        double half = (piece.to - piece.from) / panels / 2;
        for (int panel = 0; panel < panels; panel++) {
            double middle = piece.from + (2 * panel + 1) * half;
            for (int i = 0; i < rule.getNumberOfPoints(); i++) {
                Station station = stretch.at(middle + half * rule.getPoint(i));
                length += rule.getWeight(i) * station.speed();
                volume += rule.getWeight(i) * deposit.applyAsDouble(station);
            }
        }
        return new Sums(length * half, volume * half);
    }

    /** The length alone. */
    private static double gauss(Stretch stretch, Interval piece, int panels) {
        double length = 0;
        double half = (piece.to - piece.from) / panels / 2;
        for (int panel = 0; panel < panels; panel++) {
            double middle = piece.from + (2 * panel + 1) * half;
            length += SHARE_PANEL.integrate(at -> stretch.speed(middle + half * at));
        }
        return length * half;
    }

    /** Length of a piece of a stretch, six digits of it, m. */
    static double length(Stretch stretch, double from, double to) {
        Interval piece = new Interval(from, to);
        double before = gauss(stretch, piece, 1);
        for (int panels = 2; ; panels *= 2) {
            double now = gauss(stretch, piece, panels);
            if (Sums.agree(now, before) || panels >= MOST_PANELS) {
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
