package org.seamtally.seam;

import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * The length of a piece of a closed stretch, by the Fourier series of its speed, integrated term by term. The speed is smooth
 * and periodic, so that its coefficients fall as fast as the trapezoid rule converges (Trefethen and Weideman, SIAM Review
 * 56, 2014, 385).
 */
final class RunningLength {

    private final double mean;
    /** Radians of the round by the parameter. */
    private final double rate;
    /** The length's coefficients from the first harmonic on, m: what stands before the cosine and, negated, the sine. */
    private final double[] cosines;

    private final double[] sines;

    /**
     * @param speeds evenly spaced over the round from its start on, m by the parameter; as many as a power of two, at least 8
     * @param end where the parameter ends
     */
    RunningLength(double[] speeds, double end) {
        int points = speeds.length;
        double[][] spectrum = {speeds.clone(), new double[points]};
        FastFourierTransformer.transformInPlace(spectrum, DftNormalization.STANDARD, TransformType.FORWARD);
        mean = spectrum[0][0] / points;
        rate = 2 * Math.PI / end;
        int harmonics = points / 2 - 1;
        cosines = new double[harmonics];
        sines = new double[harmonics];
        for (int i = 0; i < harmonics; i++) {
            // the integral of 2 (x + iy) exp(ikt)/points over t, real part
            double factor = 2 / (points * (i + 1) * rate);
            cosines[i] = factor * spectrum[1][i + 1];
            sines[i] = -factor * spectrum[0][i + 1];
        }
    }

    /** Length of the highest harmonics that are told apart, m: what is left out is about as long. */
    double tail() {
        int last = cosines.length - 1;
        // where the round is symmetric twice over every other one vanishes
        return Math.max(Math.hypot(cosines[last], sines[last]), Math.hypot(cosines[last - 1], sines[last - 1]));
    }

    /** Length of a piece, m. */
    double between(double from, double to) {
        return mean * (to - from) + waves(to) - waves(from);
    }

    private double waves(double parameter) {
        double cos = Math.cos(rate * parameter);
        double sin = Math.sin(rate * parameter);
        // Horner's rule in powers of exp(it)
        double real = 0;
        double imaginary = 0;
        for (int i = cosines.length - 1; i >= 0; i--) {
            real += cosines[i];
            imaginary += sines[i];
            double turned = real * cos - imaginary * sin;
            imaginary = real * sin + imaginary * cos;
            real = turned;
        }
        return real;
    }
}
