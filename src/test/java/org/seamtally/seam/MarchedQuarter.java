package org.seamtally.seam;

import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * A quarter of the seam, marched from the heel or the toe to one saddle, for the reference only. Lengths are in
 * branch radii; the side is mirrored so that the saddle lies at the branch's greatest y.
 *
 * <p>The seam is where two implicit equations hold at once,
 *
 * <pre>
 *   main    y² + z² = R²
 *   branch  v² + q² = 1,   v = z cos θ − x sin θ,   q = y − e
 * </pre>
 *
 * and it runs along the cross product of their gradients. It is marched in the parameter whose speed is that product
 * of the unit gradients, and with h = 1 − q instead of y: where the tubes are nearly equal the surfaces nearly touch
 * at the saddle, and there h, v and z fall off exponentially in that parameter, so that a step has no corner to meet.
 * What the march drifts off the two equations, some 10⁻¹⁶, would stay while they fall; so it is put back onto both
 * each time v has fallen to a tenth. By plain arc length it would be lost beside a gap of 10⁻¹².
 */
final class MarchedQuarter implements OrdinaryDifferentialEquation {

    // the state: height left to the branch's top, distance across it, height in the main tube, and three sums
    private static final int H = 0;
    private static final int V = 1;
    private static final int Z = 2;
    private static final int LENGTH = 3;
    private static final int VOLUME = 4;
    private static final int GROOVE = 5;

    private static final double RELATIVE = 1e-13;
    // coordinates: far below the corner's size at the least gap a double can hold, so that the relative one rules;
    // sums: well below 1e-10 of any of them
    private static final double[] ABSOLUTE_TOLERANCE = {1e-24, 1e-20, 1e-20, 1e-14, 1e-17, 1e-14};
    private static final double[] RELATIVE_TOLERANCE = {RELATIVE, RELATIVE, RELATIVE, RELATIVE, RELATIVE, RELATIVE};
    // short enough that reading between two steps, at an event, is as good as the steps themselves
    private static final double GREATEST_STEP = 0.05;
    // the slowest quarter (20 degrees, thin branch at the main tube's edge) takes a few hundred
    private static final double LONGEST_MARCH = 1e5;
    // with equal tubes the saddle is never reached: stop here, and add the rest by the trapezoid, which errs by the
    // cube of it
    private static final double SHORT_OF_SADDLE = 1e-5;

    // far enough from heel or toe for the angle to have left its level stretch by more than rounding: about 1e-6 rad
    private static final double AHEAD = 0.999;

    private final double mainRadius;
    private final double gap;
    private final double sin;
    private final double cos;
    private final double side;
    private final double legMain;
    private final double legBranch;
    private final double rise;
    private boolean groove;
    private double least = Math.PI;
    private double greatest = 0;
    private double drift = 0;

    /**
     * @param mainRadius radius of the main tube, in branch radii
     * @param gap height of the main tube's side over the branch's, in branch radii, at least 0
     * @param theta angle between the axes, rad
     * @param fromHeel start at the heel, else at the toe
     */
    MarchedQuarter(
            double mainRadius,
            double gap,
            double theta,
            boolean fromHeel,
            double legMain,
            double legBranch,
            double rise) {
        this.mainRadius = mainRadius;
        this.gap = gap;
        this.sin = Math.sin(theta);
        this.cos = Math.cos(theta);
        this.side = fromHeel ? -1 : 1;
        this.legMain = legMain;
        this.legBranch = legBranch;
        this.rise = rise;
    }

    /**
     * What a quarter adds up to.
     *
     * @param inward unit tangent at the saddle, pointing from it into this quarter
     * @param saddleMoment the section's first moment at the saddle, as a vector
     * @param drift the most that the march was found off the two implicit equations, of unit size each
     */
    record Sum(
            double length,
            double volume,
            double grooveLength,
            double least,
            double greatest,
            MarchedVector inward,
            MarchedVector saddleMoment,
            double drift) {}

    /** The curve's frame at one state. */
    private record Place(
            MarchedVector along, double sinDihedral, double dihedral, double curvatureMain, double curvatureBranch) {}

    private Place place(double h, double v, double z) {
        double q = 1 - h;
        MarchedVector onMain = new MarchedVector(0, (mainRadius - gap - h) / mainRadius, z / mainRadius);
        MarchedVector onBranch = new MarchedVector(-v * sin, q, v * cos);
        // towards the saddle: y rises
        MarchedVector product = onMain.cross(onBranch).times(-side);
        double s = product.norm();
        MarchedVector t = product.times(1 / s);
        double tv = t.z() * cos - t.x() * sin;
        // T is square to both gradients all along, so T'·n = −T·n' : the normal curvatures from the Hessians
        return new Place(
                t,
                s,
                Math.atan2(s, -onMain.dot(onBranch)),
                (t.y() * t.y() + t.z() * t.z()) / mainRadius,
                tv * tv + t.y() * t.y());
    }

    private Place place(double[] state) {
        return place(state[H], state[V], state[Z]);
    }

    @Override
    public int getDimension() {
        return 6;
    }

    @Override
    public double[] computeDerivatives(double parameter, double[] state) {
        Place p = place(state);
        MarchedVector t = p.along();
        double ds = p.sinDihedral();
        MarchedSection section = MarchedSection.at(legMain, legBranch, rise, p.dihedral(), groove);
        // dT/ds lies in the plane of the two normals, known by T'·n_main and T'·n_branch; along the main tube's leg
        // a = (n_branch − (n_main·n_branch) n_main)/sin ψ it is
        double turnAlong = (-p.curvatureBranch() - Math.cos(p.dihedral()) * p.curvatureMain()) / p.sinDihedral();
        double turnOff = -p.curvatureMain();
        double volume = section.area() - section.momentAlongMain() * turnAlong - section.momentOffMain() * turnOff;
        return new double[] {-t.y() * ds, (t.z() * cos - t.x() * sin) * ds, t.z() * ds, ds, volume * ds, groove ? ds : 0
        };
    }

    /** How the cosine of the dihedral angle falls along the seam: zero where the angle is least or greatest. */
    private double opening(double[] state) {
        Place p = place(state);
        MarchedVector t = p.along();
        double tv = t.z() * cos - t.x() * sin;
        double mainTurns = (t.y() * (1 - state[H]) + t.z() * state[V] * cos) / mainRadius;
        double branchTurns = ((mainRadius - gap - state[H]) * t.y() + state[Z] * tv * cos) / mainRadius;
        return mainTurns + branchTurns;
    }

    private void note(double dihedral) {
        least = Math.min(least, dihedral);
        greatest = Math.max(greatest, dihedral);
    }

    private double[] onBoth(double h) {
        return new double[] {
            h, side * Math.sqrt(h * (2 - h)), Math.sqrt((h + gap) * (2 * mainRadius - h - gap)), 0, 0, 0
        };
    }

    Sum march() {
        double[] start = onBoth(1);
        double startAngle = place(start).dihedral();
        note(startAngle);
        // a toe at 45 degrees starts on the limit itself, and stays near it, the angle being level there: which side
        // the first stretch lies on says a point ahead, and no crossing is sought before it
        boolean onLimit = Math.abs(startAngle - MarchedSection.GROOVE_ANGLE) < 1e-9;
        groove = (onLimit ? place(onBoth(AHEAD)).dihedral() : startAngle) > MarchedSection.GROOVE_ANGLE;
        double firstSide = groove ? 1 : -1;

        DormandPrince853Integrator integrator =
                new DormandPrince853Integrator(1e-14, GREATEST_STEP, ABSOLUTE_TOLERANCE, RELATIVE_TOLERANCE);
        double stopAt = gap == 0 ? SHORT_OF_SADDLE : 0;
        boolean[] arrived = {false};
        integrator.addEventDetector(new Event(state -> side * state[V] - stopAt, (state, event, rising) -> {
            arrived[0] = true;
            return Action.STOP;
        }));
        for (double v = 0.1; v > 1e-9; v /= 10) {
            integrator.addEventDetector(backOnBoth(v));
        }
        // a step ends at the limit, and the other formula begins there
        integrator.addEventDetector(new Event(
                state ->
                        onLimit && state[H] > AHEAD ? firstSide : place(state).dihedral() - MarchedSection.GROOVE_ANGLE,
                (state, event, rising) -> {
                    groove = rising;
                    return Action.RESET_DERIVATIVES;
                }));
        integrator.addEventDetector(new Event(this::opening, (state, event, rising) -> {
            note(place(state.getPrimaryState()).dihedral());
            return Action.CONTINUE;
        }));
        double[] end = integrator
                .integrate(this, new ODEState(0, start), LONGEST_MARCH)
                .getPrimaryState();
        if (!arrived[0]) {
            throw new IllegalStateException("the march did not reach the saddle");
        }
        return gap == 0 ? withCorner(end) : atSaddle(end);
    }

    private Sum atSaddle(double[] end) {
        Place p = place(end);
        note(p.dihedral());
        return new Sum(
                end[LENGTH],
                end[VOLUME],
                end[GROOVE],
                least,
                greatest,
                p.along().times(-1),
                moment(p.along(), p.dihedral(), end[H], end[V], end[Z]),
                drift);
    }

    private Sum withCorner(double[] end) {
        Place p = place(end);
        // at the touching point both normals are (0, 1, 0) and both normal curvatures agree: T_z²/R = T_v²
        double tv = side / Math.sqrt(mainRadius);
        MarchedVector inward = new MarchedVector((cos - tv) / sin, 0, 1).unit();
        MarchedVector left = new MarchedVector((end[Z] * cos - end[V]) / sin, end[H], end[Z]);
        double length = left.norm();
        note(Math.PI);

        double areas = MarchedSection.at(legMain, legBranch, rise, p.dihedral(), groove)
                        .area()
                + MarchedSection.at(legMain, legBranch, rise, Math.PI, true).area();
        MarchedVector here = moment(p.along(), p.dihedral(), end[H], end[V], end[Z]);
        MarchedVector there = moment(inward.times(-1), Math.PI, 0, 0, 0);
        MarchedVector turn = inward.times(-1).minus(p.along());
        double volume = areas / 2 * length - here.plus(there).dot(turn) / 2;
        return new Sum(
                end[LENGTH] + length,
                end[VOLUME] + volume,
                end[GROOVE] + length,
                least,
                greatest,
                inward,
                there,
                drift);
    }

    private MarchedVector moment(MarchedVector along, double dihedral, double h, double v, double z) {
        MarchedVector onMain = new MarchedVector(0, (mainRadius - gap - h) / mainRadius, z / mainRadius);
        MarchedVector leg = along.times(-side).cross(onMain);
        MarchedSection section =
                MarchedSection.at(legMain, legBranch, rise, dihedral, dihedral > MarchedSection.GROOVE_ANGLE);
        return leg.times(section.momentAlongMain()).plus(onMain.times(section.momentOffMain()));
    }

    private Event backOnBoth(double distance) {
        return new Event(state -> side * state[V] - distance, new ODEEventHandler() {
            @Override
            public Action eventOccurred(ODEStateAndDerivative state, ODEEventDetector event, boolean rising) {
                return Action.RESET_STATE;
            }

            @Override
            public ODEState resetState(ODEEventDetector event, ODEStateAndDerivative state) {
                double[] s = state.getPrimaryState().clone();
                double v = s[V];
                double[] exact = onBoth(v * v / (1 + Math.sqrt(1 - v * v)));
                drift = Math.max(drift, Math.abs(exact[H] - s[H]));
                drift = Math.max(drift, Math.abs(exact[Z] * exact[Z] - s[Z] * s[Z]) / (mainRadius * mainRadius));
                s[H] = exact[H];
                s[Z] = exact[Z];
                return new ODEState(state.getTime(), s);
            }
        });
    }

    private interface OfState {
        double at(double[] state);
    }

    private record Event(OfState function, ODEEventHandler handler) implements ODEEventDetector {
        @Override
        public AdaptableInterval getMaxCheckInterval() {
            return AdaptableInterval.of(GREATEST_STEP);
        }

        @Override
        public int getMaxIterationCount() {
            return 200;
        }

        @Override
        public BracketedUnivariateSolver<UnivariateFunction> getSolver() {
            return new BracketingNthOrderBrentSolver(1e-15, 1e-14, 1e-18, 5);
        }

        @Override
        public ODEEventHandler getHandler() {
            return handler;
        }

        @Override
        public double g(ODEStateAndDerivative state) {
            return function.at(state.getPrimaryState());
        }
    }
}
