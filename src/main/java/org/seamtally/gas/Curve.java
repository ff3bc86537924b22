package org.seamtally.gas;

import java.util.stream.DoubleStream;

/** Which times to draw a course at: equal steps along the drawn line, so that its steep start is as smooth as its tail. */
final class Curve {

    /** Smooth at the width of a page or a screen; small enough to send. */
    static final int POINTS = 101;

    /** The line's length is summed over this many pieces for each point drawn. */
    private static final int FINER = 8;

    private Curve() {}

    /** Times from 0 to an end, rising. */
    static DoubleStream times(Course course, double end) {
        if (end <= 0) {
            return DoubleStream.of(0);
        }
        int pieces = (POINTS - 1) * FINER;
        double[] time = new double[pieces + 1];
        double[] length = new double[pieces + 1];
        double first = course.flow(0);
        double fall = first - course.flow(end);
        double before = first;
        for (int i = 1; i <= pieces; i++) {
            // quadratic: the flow falls fastest at the start
            double share = (double) i / pieces;
            time[i] = end * share * share;
            double flow = course.flow(time[i]);
            length[i] = length[i - 1] + Math.hypot((time[i] - time[i - 1]) / end, (flow - before) / fall);
            before = flow;
        }
        double[] chosen = new double[POINTS];
        int piece = 0;
        for (int i = 1; i < POINTS - 1; i++) {
            double wanted = length[pieces] * i / (POINTS - 1);
            while (length[piece + 1] < wanted) {
                piece++;
            }
            double share = (wanted - length[piece]) / (length[piece + 1] - length[piece]);
            chosen[i] = time[piece] + share * (time[piece + 1] - time[piece]);
        }
        chosen[POINTS - 1] = end;
        return DoubleStream.of(chosen);
    }
}
