package org.seamtally.seam;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.BaseAbstractUnivariateIntegrator;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.analysis.integration.RombergIntegrator;
import org.hipparchus.analysis.integration.SimpsonIntegrator;
import org.hipparchus.exception.MathIllegalStateException;

/**
 * At how many places the seam is worked out for its length and its deposit, both to 1e-10 of {@link MarchedSeam}, beside
 * the fewest at which a library's general integrators get as near: Simpson's, Romberg's and the iterative Legendre–Gauss
 * one of 5, 10 and 20 points, over the half of the seam that mirrors the other, in one piece and in two that end where the
 * tubes are nearest each other. They are asked for 1e-10, as one must who does not know the truth; what comes no nearer
 * than that does not count. A general integrator gives one number a pass: length and deposit take the evaluations of both
 * passes. Told beside it is what they would take if one pass gave both.
 *
 * <p>Beside it, what no one can have: the fewest with the loosest tolerance that happens to be enough, found by holding it
 * against the truth.
 *
 * <p>Run by {@code load-tests/seam-points}.
 */
public final class SeamPoints {

    /** True error asked for, as a share. */
    static final double ERROR = 1e-10;

    /** What stands for no integrator that gets there. */
    static final int NONE = Integer.MAX_VALUE;

    private static final double MAIN_RADIUS = 19.05e-3;

    // beyond it an integrator is taken to have given up
    private static final int MOST = 4_000_000;

    private static final DepositSection SECTION = DepositSection.ofLeg(3.175e-3, 0, new Face(Face.Form.CONVEX, 0.05));

    private SeamPoints() {}

    /**
     * What was found for one joint.
     *
     * @param ratio r/R
     * @param degrees angle between the axes
     * @param sums places that length and deposit are added up from, the groove's fuller face left out
     * @param all places for all of it: groove, dihedral angle and its turns
     * @param error the greater of length's and deposit's, as a share
     * @param general the general integrators' fewest evaluations for the same two numbers
     * @param by which of them
     * @param generalShared the fewest if one pass gave both
     * @param generalByTrial the same with the loosest tolerance that is enough
     * @param generalWhole their fewest with the groove
     */
    record Found(
            double ratio,
            double degrees,
            int sums,
            int all,
            double error,
            int general,
            String by,
            int generalShared,
            int generalByTrial,
            int generalWhole) {

        /** Places over the general integrators' fewest evaluations. */
        double share() {
            return (double) sums / general;
        }

        /** The same if one pass of theirs gave both numbers. */
        double shareOfShared() {
            return (double) sums / generalShared;
        }
    }

    static Found at(double ratio, double degrees) {
        double angle = Math.toRadians(degrees);
        double branch = ratio * MAIN_RADIUS;
        MarchedSeam reference = MarchedSeam.march(
                branch,
                MAIN_RADIUS,
                angle,
                0,
                SECTION.legMain(),
                SECTION.legBranch(),
                SECTION.rootGap(),
                SECTION.face().signedRise());
        CountedLine line = new CountedLine(new TwoTubes(branch, MAIN_RADIUS, angle, 0));
        Seam seam = SeamIntegral.along(line, SECTION);
        double error = Math.max(
                Math.abs(seam.length() / reference.length() - 1),
                Math.abs(seam.depositVolume() / reference.volume() - 1));
        ByAngle integrand = new ByAngle(branch, MAIN_RADIUS, angle, SECTION);
        Fewest both = new Fewest();
        Fewest shared = new Fewest();
        Fewest byTrial = new Fewest();
        Fewest whole = new Fewest();
        for (Integrator integrator : integrators()) {
            // the deposit without its groove has no reference of its own: the length, as smooth, stands for it
            int length = integrator.points(integrand::length, reference.length() / 2, ERROR);
            int deposit = integrator.points(integrand::deposit, Double.NaN, ERROR);
            int wholeDeposit = integrator.points(integrand::wholeDeposit, reference.volume() / 2, ERROR);
            both.offer(length == NONE || deposit == NONE ? NONE : length + deposit, integrator.name);
            shared.offer(Math.max(length, deposit), integrator.name);
            whole.offer(Math.max(length, wholeDeposit), integrator.name);
            byTrial.offer(integrator.pointsByTrial(integrand::length, reference.length() / 2), integrator.name);
        }
        return new Found(
                ratio,
                degrees,
                line.forSums(),
                line.places(),
                error,
                both.points,
                both.by,
                shared.points,
                byTrial.points,
                whole.points);
    }

    private static final class Fewest {
        private int points = NONE;
        private String by = "none";

        void offer(int other, String name) {
            if (other < points) {
                points = other;
                by = name;
            }
        }
    }

    private interface Making {
        BaseAbstractUnivariateIntegrator within(double relative);
    }

    /** An integrator by its tolerance, over one piece or two. */
    private record Integrator(String name, Making making, double[] ends) {

        /** Evaluations at a tolerance; {@link #NONE} where it gives up or misses the truth. */
        int points(UnivariateFunction function, double truth, double tolerance) {
            BaseAbstractUnivariateIntegrator way = making.within(tolerance);
            double sum = 0;
            int points = 0;
            for (int i = 1; i < ends.length; i++) {
                try {
                    sum += way.integrate(MOST, function, ends[i - 1], ends[i]);
                } catch (MathIllegalStateException e) {
                    return NONE;
                }
                points += way.getEvaluations();
            }
            return Double.isNaN(truth) || Math.abs(sum / truth - 1) <= ERROR ? points : NONE;
        }

        int pointsByTrial(UnivariateFunction function, double truth) {
            int fewest = NONE;
            for (int digits = 1; digits <= 12; digits++) {
                fewest = Math.min(fewest, points(function, truth, Math.pow(10, -digits)));
            }
            return fewest;
        }
    }

    private static List<Integrator> integrators() {
        List<Integrator> all = new ArrayList<>();
        for (double[] ends : new double[][] {{0, Math.PI}, {0, Math.PI / 2, Math.PI}}) {
            String pieces = ends.length == 2 ? "" : ", split";
            all.add(new Integrator("Simpson" + pieces, error -> new SimpsonIntegrator(error, 1e-300, 3, 22), ends));
            all.add(new Integrator("Romberg" + pieces, error -> new RombergIntegrator(error, 1e-300, 3, 22), ends));
            for (int points : new int[] {5, 10, 20}) {
                all.add(new Integrator(
                        "Legendre-Gauss, " + points + pieces,
                        error -> new IterativeLegendreGaussIntegrator(points, error, 1e-300, 2, 22),
                        ends));
            }
        }
        return all;
    }

    /** @param args none */
    public static void main(String[] args) {
        System.out.printf(
                "%-9s %6s %6s %8s  %8s %6s  %-26s %8s %6s  %8s  %8s %8s%n",
                "r/R",
                "angle",
                "sums",
                "error",
                "general",
                "share",
                "by",
                "one pass",
                "share",
                "by trial",
                "all",
                "general");
        double[] most = new double[3];
        for (double ratio : new double[] {0.3, 0.5, 0.7, 0.8, 0.9, 0.95, 0.99, 0.999, 1 - 1e-6}) {
            int band = ratio <= 0.9 ? 0 : ratio <= 0.999 ? 1 : 2;
            int ours = 0;
            int general = 0;
            for (double degrees : new double[] {90, 60, 45, 30}) {
                Found found = at(ratio, degrees);
                System.out.printf(
                        Locale.ROOT,
                        "%-9s %6.0f %6d %8.0e  %8d %6.3f  %-26s %8d %6.3f  %8d  %8d %8d%n",
                        ratio,
                        degrees,
                        found.sums,
                        found.error,
                        found.general,
                        found.share(),
                        found.by,
                        found.generalShared,
                        found.shareOfShared(),
                        found.generalByTrial,
                        found.all,
                        found.generalWhole);
                ours += found.sums;
                general += found.general;
            }
            most[band] = Math.max(most[band], (double) ours / general);
        }
        System.out.println();
        System.out.printf(
                Locale.ROOT,
                "seam places to the general integrators' fewest, r/R to 0.9: %.2f (at most 0.33)%n",
                most[0]);
        System.out.printf(Locale.ROOT, "the same, r/R to 0.999: %.2f (at most 0.50)%n", most[1]);
        System.out.printf(Locale.ROOT, "the same, r/R of 1 - 1e-6: %.4f (at most 0.0200)%n", most[2]);
    }
}
