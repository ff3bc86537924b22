package org.seamtally.seam;

/**
 * The circular segment between a weld's face and its chord, for a chord of 1. Plane geometry.
 *
 * @param area goes with the chord's square; negative where the face is hollow
 * @param moment first moment about the chord, which goes with its cube; never negative for one segment, since area and side
 *     change sign together
 */
record FaceSegment(double area, double moment) {

    /** Below this rise the segment is taken by its series: the closed form has lost half its digits there. */
    private static final double SMALL_RISE = 1e-4;

    /** @param rise over the chord, negative where hollow, of a size below 1/2 */
    static FaceSegment of(double rise) {
        double k = Math.abs(rise);
        if (k < SMALL_RISE) {
            // (2/3) k + (8/15) k³
            return new FaceSegment(Math.copySign(2 * k / 3 * (1 + 0.8 * k * k), rise), 4 * k * k / 15);
        }
        // half the arc's angle is 2 atan 2k
        double half = 2 * Math.atan(2 * k);
        double sin = 4 * k / (1 + 4 * k * k);
        double cos = (1 - 4 * k * k) / (1 + 4 * k * k);
        double area = (half - sin * cos) / (4 * sin * sin);
        // about the circle's centre the moment is 1/12; the centre lies cot(half)/2 behind the chord
        return new FaceSegment(Math.copySign(area, rise), 1.0 / 12 - area * cos / (2 * sin));
    }

    /** What it holds more than another. */
    FaceSegment less(FaceSegment other) {
        return new FaceSegment(area - other.area, moment - other.moment);
    }
}
