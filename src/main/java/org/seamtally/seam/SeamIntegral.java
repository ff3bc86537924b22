package org.seamtally.seam;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.LegendreRuleFactory;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Length, deposit and the run of the dihedral angle along a root line.
 *
 * <p>The deposit follows Pappus's theorem for a section that changes along a curved line: V = ∮A ds − ∮M·dT. On a closed
 * stretch the integrand is smooth and periodic, and the trapezoid rule converges geometrically (Trefethen and Weideman,
 * SIAM Review 56, 2014, 385); the same places give the length of every piece. What turns into a groove past 135° is added
 * apart, on its own stretch of the line, so that the corner in the rise there costs no accuracy. It and open stretches are
 * cut into panels of Gauss's and Kronrod's places.
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

    /**
     * The same for panels: 23 powers of the step stand behind the sum and 14 behind what confirms it, so that the sum's error
     * is about the difference to the power of 1.6.
     */
    private static final double PANELS_AGREE = 1e-8;

    /** The panel for a length alone: exact to degree 15. The factory of all rules would begin with forty digits of π. */
    private static final GaussIntegrator LENGTH_PANEL = new GaussIntegrator(new LegendreRuleFactory().getRule(8));

    /** Lengths of zones are as near as this share of a whole stretch. */
    private static final double ZONES_AGREE = 1e-11;

    /** Panels at most on one piece; eight have been seen. */
    private static final int MOST_PANELS = 128;

    /** A passage through a limit is met when it is known to this share of the stretch. */
    private static final double PASSAGE_MET = 1e-11;

    /** One or two steps are usual; where the angle turns back at the very limit each halves the rest. */
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
        Deposit deposit = new Deposit(section);
        for (Stretch stretch : line.stretches()) {
            Run run = Run.of(stretch, deposit);
            Sums grooves = run.grooves(deposit);
            length += run.sums.length;
            volume += run.sums.volume + grooves.volume;
            grooveLength += grooves.length;
            least = Math.min(least, run.leastDihedral());
            greatest = Math.max(greatest, run.greatestDihedral());
            for (int i = 0; i < limits.length; i++) {
                wider[i] += limits[i] == DepositSection.WIDEST_FILLET
                        ? grooves.length
                        : run.lengthWider(Math.cos(limits[i]));
            }
        }
        for (Station corner : line.corners()) {
            volume += deposit.at(corner) + deposit.ofGroove(corner);
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

    /** A place on a stretch by its parameter. */
    private record Place(double parameter, Station station) {}

    /** A section's deposit along a line: what is the same at each place is worked out once. */
    private record Deposit(DepositSection section, FaceSegment asked) {

        Deposit(DepositSection section) {
            this(section, section.asked());
        }

        /** With its face as asked for, m³ by the parameter. */
        double at(Station station) {
            return section.deposit(station, asked);
        }

        /** What a groove's fuller face adds, m³ by the parameter. */
        double ofGroove(Station station) {
            return section.grooveDeposit(station, asked);
        }
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

        boolean agrees(Sums other, double share) {
            return agree(length, other.length, share) && agree(volume, other.volume, share);
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
        /** Of a closed stretch, where zones are asked for. */
        private RunningLength running;
        /** Evenly spaced over the span. */
        private Station[] stations;
        /** Places in order between which the dihedral angle runs one way only. */
        private final List<Place> turns = new ArrayList<>();

        private double leastCos = 1;
        private double greatestCos = -1;

        private Run(Stretch stretch) {
            this.stretch = stretch;
            this.times = stretch.mirrored() ? 2 : 1;
            this.span = stretch.end() / times;
        }

        static Run of(Stretch stretch, Deposit deposit) {
            Run run = new Run(stretch);
            if (stretch.closed()) {
                run.addRound(deposit);
            } else {
                run.addAcross(deposit);
            }
            run.findTurns();
            return run;
        }

        /** The trapezoid rule round a closed stretch, doubled until it has settled. */
        private void addRound(Deposit deposit) {
            int steps = (int) (FIRST_POINTS / times);
            stations = new Station[steps + 1];
            // of half the way round, the two ends count half each; of the whole, they are one place
            for (int i = 0; i < steps; i++) {
                stations[i] = stretch.at(span * i / steps);
            }
            stations[steps] = stretch.mirrored() ? stretch.at(span) : stations[0];
            Sums inner = between(stations, deposit, 1, 1);
            Sums ends = sum(stations[0], deposit)
                    .plus(sum(stations[steps], deposit))
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
                inner = inner.plus(between(stations, deposit, 1, 2));
                now = inner.plus(ends).times(span * times / steps);
            } while (!(now.agrees(last, AGREEMENT) && steps * times >= POINTS_TO_SEE) && steps * times < MOST_POINTS);
            sums = now;
        }

        private static Sums between(Station[] stations, Deposit deposit, int first, int step) {
            double length = 0;
            double volume = 0;
            for (int i = first; i < stations.length - 1; i += step) {
                length += stations[i].speed();
                volume += deposit.at(stations[i]);
            }
            return new Sums(length, volume);
        }

        private static Sums sum(Station at, Deposit deposit) {
            return new Sums(at.speed(), deposit.at(at));
        }

        private void addAcross(Deposit deposit) {
            sums = panels(new Interval(0, span), deposit::at).times(times);
            int steps = (int) (POINTS_TO_SEE / times);
            stations = new Station[steps + 1];
            for (int i = 0; i <= steps; i++) {
                stations[i] = at(span * i / steps);
            }
        }

        private void findTurns() {
            int last = stations.length - 1;
            double step = span / last;
            turns.add(new Place(0, stations[0]));
            see(stations[0]);
            for (int i = 1; i <= last; i++) {
                Station before = stations[i - 1];
                Station after = stations[i];
                see(after);
                if (before.dihedralDrift() * after.dihedralDrift() < 0) {
                    double turn = solve(p -> at(p).dihedralDrift(), step * (i - 1), step * i);
                    Station there = at(turn);
                    turns.add(new Place(turn, there));
                    see(there);
                }
                if (i == last || after.dihedralDrift() == 0) {
                    turns.add(new Place(step * i, after));
                }
            }
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

        /** Length of what is wider than a fillet, and what a groove's fuller face adds there. */
        Sums grooves(Deposit deposit) {
            Sums all = Sums.NONE;
            for (Interval groove : wider(COS_WIDEST_FILLET)) {
                all = all.plus(panels(groove, deposit::ofGroove).times(times));
            }
            return all;
        }

        /** How much of its length is wider than a limit, m. */
        double lengthWider(double cosLimit) {
            double all = 0;
            for (Interval piece : wider(cosLimit)) {
                all += lengthOf(piece) * times;
            }
            return all;
        }

        private double lengthOf(Interval piece) {
            if (!stretch.closed()) {
                return length(stretch, piece.from, piece.to);
            }
            if (running == null) {
                running = runningLength();
            }
            return running.between(piece.from, piece.to);
        }

        /** Out of the stations' speeds, and more of them until the last harmonics no longer count. */
        private RunningLength runningLength() {
            int last = stations.length - 1;
            int steps = (int) (last * times);
            double[] speeds = new double[steps];
            for (int i = 0; i < steps; i++) {
                speeds[i] = stations[last - Math.abs(last - i)].speed();
            }
            RunningLength now = new RunningLength(speeds, stretch.end());
            while (now.tail() > ZONES_AGREE * sums.length && steps < MOST_POINTS) {
                double[] denser = new double[2 * steps];
                for (int i = 0; i < steps; i++) {
                    denser[2 * i] = speeds[i];
                    denser[2 * i + 1] = stretch.speed(stretch.end() * (2 * i + 1) / (2 * steps));
                }
                speeds = denser;
                steps *= 2;
                now = new RunningLength(speeds, stretch.end());
            }
            return now;
        }

        /** The pieces on which the cosine of the dihedral angle is below a limit. */
        private List<Interval> wider(double cosLimit) {
            if (leastCos >= cosLimit) {
                return List.of();
            }
            List<Interval> found = new ArrayList<>();
            for (int i = 1; i < turns.size(); i++) {
                Place from = turns.get(i - 1);
                Place to = turns.get(i);
                double first = from.station.cosDihedral() - cosLimit;
                double last = to.station.cosDihedral() - cosLimit;
                if (first < 0 && last < 0) {
                    found.add(new Interval(from.parameter, to.parameter));
                } else if (first < 0) {
                    found.add(new Interval(from.parameter, last == 0 ? to.parameter : passage(cosLimit, from, to)));
                } else if (last < 0) {
                    found.add(new Interval(first == 0 ? from.parameter : passage(cosLimit, to, from), to.parameter));
                }
            }
            return found;
        }

        /**
         * Where the cosine of the dihedral angle passes a limit: on the cubic between the two stations that it passes it
         * between, and from there by Newton's steps.
         *
         * @param wide a place where it is below the limit
         * @param narrow one where it is above; between the two it runs one way only
         */
        private double passage(double cosLimit, Place wide, Place narrow) {
            Place below = wide;
            Place above = narrow;
            double step = span / (stations.length - 1);
            int way = narrow.parameter > wide.parameter ? 1 : -1;
            for (int i = (int) Math.floor(wide.parameter / step) + (way > 0 ? 1 : 0);
                    way * (narrow.parameter - i * step) > 0 && i >= 0 && i < stations.length;
                    i += way) {
                if (way * (i * step - wide.parameter) > 0) {
                    Place station = new Place(i * step, stations[i]);
                    if (station.station.cosDihedral() >= cosLimit) {
                        above = station;
                        break;
                    }
                    below = station;
                }
            }
            Course between = Course.cubic(below, above);
            double near = (below.parameter + above.parameter) / 2;
            near = passage(between, cosLimit, below.parameter, above.parameter, near);
            return passage(p -> Angle.of(at(p)), cosLimit, below.parameter, above.parameter, near);
        }

        /** By Newton's steps from a place between two others, kept between them. */
        private double passage(Course course, double cosLimit, double wide, double narrow, double from) {
            double below = wide;
            double above = narrow;
            double at = from;
            for (int steps = 0; steps < MOST_STEPS; steps++) {
                Angle here = course.at(at);
                double over = here.cos - cosLimit;
                if (over == 0) {
                    return at;
                }
                if (over < 0) {
                    below = at;
                } else {
                    above = at;
                }
                double next = at - over / here.drift;
                // what a step of Newton's leaves is about its square over twice the way to where the angle turns back
                double left = (next - at) * (next - at) / Math.min(Math.abs(at - wide), Math.abs(at - narrow));
                if (!(next > Math.min(below, above) && next < Math.max(below, above))) {
                    next = (below + above) / 2;
                    left = Math.abs(next - at);
                }
                if (left <= PASSAGE_MET * span) {
                    return next;
                }
                at = next;
            }
            return at;
        }

        /** An integral over a piece, in as many panels as it takes to settle. */
        private Sums panels(Interval piece, ToDoubleFunction<Station> deposit) {
            for (int panels = 1; ; panels *= 2) {
                Sums sums = Sums.NONE;
                Sums confirming = Sums.NONE;
                double half = (piece.to - piece.from) / panels / 2;
                for (int panel = 0; panel < panels; panel++) {
                    double middle = piece.from + (2 * panel + 1) * half;
                    for (int i = 0; i < GaussKronrod.PLACES; i++) {
                        Station station = stretch.at(middle + half * GaussKronrod.place(i));
                        Sums here = new Sums(station.speed(), deposit.applyAsDouble(station)).times(half);
                        sums = sums.plus(here.times(GaussKronrod.weight(i)));
                        confirming = confirming.plus(here.times(GaussKronrod.gaussWeight(i)));
                    }
                }
                if (sums.agrees(confirming, PANELS_AGREE) || panels >= MOST_PANELS) {
                    return sums;
                }
            }
        }
    }

    /** The cosine of the dihedral angle and its derivative by the parameter. */
    private record Angle(double cos, double drift) {

        static Angle of(Station at) {
            return new Angle(at.cosDihedral(), at.dihedralDrift());
        }
    }

    /** How the dihedral angle runs along a stretch, by the parameter. */
    private interface Course {

        Angle at(double parameter);

        /** The cubic that has both places' angles and drifts. */
        static Course cubic(Place from, Place to) {
            double span = to.parameter - from.parameter;
            double start = from.station.cosDihedral();
            double rise = to.station.cosDihedral() - start;
            double first = from.station.dihedralDrift() * span;
            double last = to.station.dihedralDrift() * span;
            double square = 3 * rise - 2 * first - last;
            double cube = first + last - 2 * rise;
            return parameter -> {
                double t = (parameter - from.parameter) / span;
                return new Angle(
                        start + t * (first + t * (square + t * cube)),
                        (first + t * (2 * square + 3 * t * cube)) / span);
            };
        }
    }

    /**
     * Length of a piece of a stretch, m. With panels halved 16 powers of the step stand behind it: where two sums agree the
     * second is nearer by four digits.
     */
    static double length(Stretch stretch, double from, double to) {
        double before = length(stretch, from, to, 1);
        for (int panels = 2; ; panels *= 2) {
            double now = length(stretch, from, to, panels);
            if (agree(now, before, AGREEMENT) || panels >= MOST_PANELS) {
                return now;
            }
            before = now;
        }
    }

    private static double length(Stretch stretch, double from, double to, int panels) {
        double length = 0;
        double half = (to - from) / panels / 2;
        for (int panel = 0; panel < panels; panel++) {
            double middle = from + (2 * panel + 1) * half;
            length += LENGTH_PANEL.integrate(at -> stretch.speed(middle + half * at));
        }
        return length * half;
    }

    private static boolean agree(double one, double other, double share) {
        return Math.abs(one - other) <= share * Math.abs(one);
    }

    private static double solve(UnivariateFunction function, double from, double to) {
        // 1e-13 of a parameter of order one; the solver needs some ten evaluations, a hundred are never met
        return new BracketingNthOrderBrentSolver(1e-14, 1e-13, 5).solve(100, function, from, to);
    }
}
