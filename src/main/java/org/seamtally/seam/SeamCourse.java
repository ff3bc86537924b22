package org.seamtally.seam;

import java.util.ArrayList;
import java.util.List;

/** A seam unrolled: the dihedral angle and the section of the deposit along the way, to be looked at. */
public final class SeamCourse {

    /** Points at most: one for each two degrees of a round, more than a picture shows. */
    public static final int MOST_POINTS = 181;

    /** How far inside an end of an open stretch its end is looked at, as a share of it: in a corner nothing has a direction. */
    private static final double HAIR = 1e-9;

    private SeamCourse() {}

    /**
     * A place along a seam.
     *
     * @param along length of the root line up to there, m
     * @param dihedral angle between the two surfaces, rad
     * @param section of the deposit, square to the seam, m²
     */
    public record Place(double along, double dihedral, double section) {}

    /**
     * Runs along a weld.
     *
     * @return places in order from the root line's start to its end, both among them, and each corner; a round ends where it
     *     began
     */
    public static List<Place> along(RootLine line, DepositSection section) {
        List<Stretch> stretches = line.stretches();
        int steps = (MOST_POINTS - 1) / stretches.size();
        List<Place> places = new ArrayList<>();
        double along = 0;
        for (Stretch stretch : stretches) {
            // where stretches meet, both say the same of the corner
            for (int i = places.isEmpty() ? 0 : 1; i <= steps; i++) {
                if (i > 0) {
                    along += SeamIntegral.length(
                            stretch, parameter(stretch, i - 1, steps), parameter(stretch, i, steps));
                }
                Station at = stretch.at(inside(stretch, parameter(stretch, i, steps)));
                places.add(new Place(along, at.dihedral(), section.wholeArea(at)));
            }
        }
        return places;
    }

    private static double parameter(Stretch stretch, int step, int steps) {
        return stretch.end() * step / steps;
    }

    private static double inside(Stretch stretch, double parameter) {
        double hair = stretch.closed() ? 0 : HAIR * stretch.end();
        return Math.min(Math.max(parameter, hair), stretch.end() - hair);
    }
}
