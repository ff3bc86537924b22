package org.seamtally.metal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.quantity.Decimals;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * Preheat by the hydrogen-control method of AWS D1.1 (annex XI of the 2004 edition, annex B since 2020), from memory: an
 * index of analysis and hydrogen, a group of indices, and a table by restraint and thickness. The code leaves out walls
 * under 1/8 in.
 *
 * @param level hydrogen level
 * @param index 12·Pcm + log₁₀ H
 * @param group of indices
 * @param fahrenheit the table's entry, °F; the 0 stands for "below 65"
 * @param outside what lies outside the range
 */
public record HydrogenControl(Level level, double index, Group group, int fahrenheit, List<Phrase> outside)
        implements PreheatMethod {

    /** The least wall of the code's tubular scope: 1/8 in (3.2 mm as the code rounds it). */
    private static final double LEAST_WALL = 3.2e-3;

    /** Greatest index of the last group. */
    private static final double GREATEST_INDEX = 7.0;

    /** Upper ends of the thickness classes but the last, in. */
    private static final double[] THICKNESS_CLASSES = {0.375, 0.75, 1.5, 3};

    /** Least preheat, °F, by restraint, thickness class and group A to G; 0 stands for "below 65". */
    private static final int[][][] TABLE = {
        {
            {0, 0, 0, 0, 140, 280, 300},
            {0, 0, 65, 140, 210, 280, 300},
            {0, 0, 65, 175, 230, 280, 300},
            {65, 65, 100, 200, 250, 280, 300},
            {65, 65, 100, 200, 250, 280, 300}
        },
        {
            {0, 0, 0, 0, 160, 280, 320},
            {0, 0, 65, 175, 240, 290, 320},
            {0, 65, 165, 230, 280, 300, 320},
            {65, 175, 230, 265, 300, 300, 320},
            {200, 250, 280, 300, 320, 320, 320}
        },
        {
            {0, 0, 0, 100, 230, 300, 320},
            {0, 65, 150, 220, 280, 320, 320},
            {65, 185, 240, 280, 300, 320, 320},
            {240, 265, 300, 300, 320, 320, 320},
            {240, 265, 300, 300, 320, 320, 320}
        }
    };

    /** The three hydrogen levels, each with the figure the code takes for it. */
    public enum Level {
        /** Extra low: below 5 mL/100 g. */
        H1(5),
        /** Low: below 10 mL/100 g. */
        H2(10),
        /** Not controlled. */
        H3(30);

        private final double hydrogen;

        Level(double hydrogen) {
            this.hydrogen = hydrogen;
        }

        /** The level of a figure in mL/100 g. */
        static Level of(double hydrogen) {
            if (hydrogen < H1.hydrogen) {
                return H1;
            }
            return hydrogen < H2.hydrogen ? H2 : H3;
        }
    }

    /** Groups of indices. The code prints them with one decimal, A to 3.0, B 3.1 to 3.5 and so on. */
    public enum Group {
        A(3.0),
        B(3.5),
        C(4.0),
        D(4.5),
        E(5.0),
        F(5.5),
        G(Double.POSITIVE_INFINITY);

        private final double greatest;

        Group(double greatest) {
            this.greatest = greatest;
        }

        /** Between two printed groups the higher one is taken, a decision of this project. */
        static Group of(double index) {
            for (Group group : values()) {
                if (index <= group.greatest) {
                    return group;
                }
            }
            throw new IllegalArgumentException("index " + index + " is no number");
        }
    }

    /** Copies the list. */
    public HydrogenControl {
        outside = List.copyOf(outside);
    }

    /**
     * Computes it for a joint.
     *
     * @param base of the base metal
     * @param conditions wall, hydrogen and restraint
     */
    static HydrogenControl of(CarbonEquivalents base, WeldingConditions conditions) {
        double pcm = base.pcm().value();
        Level level = Level.of(conditions.hydrogen());
        double index = 12 * pcm + Math.log10(level.hydrogen);
        Group group = Group.of(index);
        List<Phrase> outside = new ArrayList<>();
        if (conditions.wall() <= LEAST_WALL) {
            outside.add(Phrase.of(
                    "wall {} is not above {}",
                    Phrase.measured(Dimension.LENGTH, conditions.wall(), 4),
                    Phrase.measured(Dimension.LENGTH, LEAST_WALL, 4)));
        }
        if (index > GREATEST_INDEX) {
            outside.add(Phrase.of("index " + Decimals.of(index, 2) + " is above " + Decimals.of(GREATEST_INDEX, 1)));
        }
        int fahrenheit = TABLE[conditions.restraint().ordinal()][thicknessClass(conditions.wall())][group.ordinal()];
        return new HydrogenControl(level, index, group, fahrenheit, outside);
    }

    /** Below 3/8 in; 3/8 to 3/4; over 3/4 to 1-1/2; over 1-1/2 to 3; over 3. */
    private static int thicknessClass(double wall) {
        // 3/8 in, once in metres, is 3/8 in again only to the last bits
        double inches = Math.rint(Customary.inches(wall) * 1e9) / 1e9;
        if (inches < THICKNESS_CLASSES[0]) {
            return 0;
        }
        for (int i = 1; i < THICKNESS_CLASSES.length; i++) {
            if (inches <= THICKNESS_CLASSES[i]) {
                return i;
            }
        }
        return THICKNESS_CLASSES.length;
    }

    @Override
    public String name() {
        return "AWS D1.1 hydrogen control";
    }

    @Override
    public OptionalDouble leastTemperature() {
        return Preheat.asked(Celsius.ofFahrenheit(fahrenheit));
    }
}
