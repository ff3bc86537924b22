package org.seamtally.bench;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Frames of joints that are all different, as request texts: each joint has a pair of tubes that no other has, at an angle of
 * its own, in one of twelve gas set-ups. The same seed makes the same frames.
 */
public final class NewFrames {

    private static final int SET_UPS = 12;
    private static final String[] BORES = {"0.1875", "0.25", "0.3125"};
    private static final String[] LENGTHS = {"12.5", "25"};
    private static final String[] FLOWS = {"15", "18"};

    private final SplittableRandom random;

    /** @param seed of all that is drawn */
    public NewFrames(long seed) {
        random = new SplittableRandom(seed);
    }

    /**
     * The next frame.
     *
     * @param joints how many
     * @param newSetUps whether its twelve set-ups were never asked for before
     */
    public byte[] next(int joints, boolean newSetUps) {
        double longer = newSetUps ? random.nextDouble() : 0;
        StringBuilder text = new StringBuilder(600 + 330 * joints);
        text.append("{\"frame\": {\"name\": \"Two-seat trail buggy\", \"quantity\": 6, \"joints\": [");
        for (int i = 0; i < joints; i++) {
            joint(text.append(i == 0 ? "" : ", "), i + 1, longer);
        }
        text.append("]}, \"steel\": {\"base\": \"4130\", \"dilution\": 0.30},"
                + " \"filler\": {\"classification\": \"ER70S-2\", \"diameter\": \"0.0625 in\", \"rodLength\": \"36 in\"},"
                + " \"arc\": {\"voltage\": \"11 V\", \"arcEfficiency\": 0.70, \"meltingEfficiency\": 0.20},"
                + " \"gas\": {\"mixture\": \"argon\", \"supplyGaugePressure\": \"50 psi\", \"preFlow\": \"0.5 s\"},"
                + " \"labour\": {\"operatingFactor\": 0.30, \"fitUpPerJoint\": \"6 min\"},"
                + " \"prices\": {\"currency\": \"USD\", \"labour\": \"65.00/h\", \"filler\": \"12.50/lb\","
                + " \"gas\": \"0.35/ft3\", \"electricity\": \"0.16/kWh\", \"overhead\": 0.15, \"margin\": 0.20}}");
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void joint(StringBuilder text, int number, double longer) {
        double main = random.nextDouble(1.25, 2.5);
        double branch = random.nextDouble(0.6, 0.97) * main;
        int setUp = random.nextInt(SET_UPS);
        text.append(String.format(
                Locale.ROOT,
                "{\"mark\": \"R%d\", \"count\": %d, \"kind\": \"tube-to-tube\","
                        + " \"branch\": {\"outsideDiameter\": \"%.4f in\", \"wall\": \"0.095 in\"},"
                        + " \"main\": {\"outsideDiameter\": \"%.4f in\", \"wall\": \"0.12 in\"},"
                        + " \"angle\": \"%d deg\", \"fillet\": {\"leg\": \"0.125 in\"}, \"tacks\": 4, \"segments\": 4,"
                        + " \"gas\": {\"flow\": \"%s ft3/h\", \"hose\": {\"insideDiameter\": \"%s in\", \"length\": \"%.6f"
                        + " ft\"}}}",
                number,
                1 + random.nextInt(4),
                branch,
                main,
                30 + random.nextInt(61),
                FLOWS[setUp / 6],
                BORES[setUp % 3],
                Double.parseDouble(LENGTHS[setUp / 3 % 2]) + longer));
    }
}
