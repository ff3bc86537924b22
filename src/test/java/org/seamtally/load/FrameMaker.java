package org.seamtally.load;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Makes frames, one after the other, of every kind of joint, of usual sizes and of sizes that nobody stocks; some joints
 * have a hose of their own. The same seed makes the same frames: {@link Random} is written down to the last bit.
 */
final class FrameMaker {

    /** Joints a frame, unless said: a small frame's. */
    static final int USUAL_JOINTS = 12;

    // tube as it is stocked: outside diameter, wall, in inches
    private static final String[][] TUBES = {
        {"0.75", "0.049"}, {"0.875", "0.058"}, {"1", "0.065"}, {"1.25", "0.083"}, {"1.5", "0.095"}, {"1.75", "0.12"}
    };
    private static final String[] HOSE_BORES = {"3", "4", "5", "6", "6.35", "8"};
    private static final String[] HOSE_LENGTHS = {"12.5", "25", "50"};

    // inches
    private static final double HAIR = 0.0001;

    private final Random random;
    private final int joints;
    private final double refused;
    private long made;

    /**
     * @param joints a frame on average, at least 1
     * @param refused share of frames that cannot be estimated, 0 to 1
     */
    FrameMaker(long seed, int joints, double refused) {
        if (joints < 1 || !(refused >= 0 && refused <= 1)) {
            throw new IllegalArgumentException("at least a joint a frame, and a share of 0 to 1 refused");
        }
        this.random = new Random(seed);
        this.joints = joints;
        this.refused = refused;
    }

    MadeFrame next() {
        made++;
        // half to one and a half times as many, so that lines are of different lengths
        int least = Math.max(1, joints / 2);
        int count = least + random.nextInt(2 * (joints - least) + 1);
        List<MadeFrame.Joint> all = new ArrayList<>(count);
        for (int i = 1; i <= count; i++) {
            all.add(joint("J" + i));
        }
        int quantity = 1 + random.nextInt(9);
        if (random.nextDouble() < refused) {
            spoil(all.get(random.nextInt(count)));
        }
        return new MadeFrame(String.format(Locale.ROOT, "Frame %07d", made), quantity, all);
    }

    private MadeFrame.Joint joint(String mark) {
        LinkedHashMap<String, String> fields = new LinkedHashMap<>();
        fields.put("mark", mark);
        fields.put("count", Integer.toString(1 + random.nextInt(4)));
        int branch = random.nextInt(TUBES.length);
        // one time in four a hair thicker than the stocked tube: its seam is nobody else's
        double hair = random.nextInt(4) == 0 ? HAIR * random.nextInt(100) : 0;
        switch (random.nextInt(8)) {
            case 0, 1, 2, 3 -> {
                fields.put("kind", "tube-to-tube");
                tube(fields, "branch", branch, hair);
                // never less than the branch, and quite often equal to it
                tube(fields, "main", branch + random.nextInt(TUBES.length - branch), hair);
                if (random.nextBoolean()) {
                    fields.put("angle", Integer.toString(40 + random.nextInt(51)));
                }
            }
            case 4 -> {
                fields.put("kind", "tube-to-plate");
                tube(fields, "branch", branch, hair);
                fields.put("plate.thickness", Integer.toString(3 + random.nextInt(6)));
            }
            case 5 -> {
                fields.put("kind", "plate-fillet");
                fields.put("plate.thickness", Integer.toString(3 + random.nextInt(6)));
                fields.put("length", Integer.toString(20 + random.nextInt(100)));
                fields.put("fillet.leg", "3");
            }
            case 6 -> {
                fields.put("kind", "tube-sleeve");
                tube(fields, "branch", branch, hair);
                fields.put("sleeve.outsideDiameter", decimal(Double.parseDouble(TUBES[branch][0]) + 0.25));
                fields.put("sleeve.wall", "0.12");
            }
            default -> {
                fields.put("kind", "plug");
                fields.put("holeDiameter", decimal(0.25 + 0.001 * random.nextInt(250)));
                fields.put("depth", TUBES[branch][1]);
            }
        }
        if (random.nextInt(5) == 0) {
            fields.put("gas.hose.insideDiameter", HOSE_BORES[random.nextInt(HOSE_BORES.length)]);
            fields.put("gas.hose.length", HOSE_LENGTHS[random.nextInt(HOSE_LENGTHS.length)]);
        }
        return new MadeFrame.Joint(fields);
    }

    private static void tube(LinkedHashMap<String, String> fields, String member, int size, double more) {
        fields.put(member + ".outsideDiameter", decimal(Double.parseDouble(TUBES[size][0]) + more));
        fields.put(member + ".wall", TUBES[size][1]);
    }

    /** Takes from a joint what it cannot be worked out without, in one of a few ways. */
    private void spoil(MadeFrame.Joint joint) {
        switch (random.nextInt(3)) {
            case 0 -> joint.fields().put("kind", "tube-to-tub");
            case 1 -> joint.fields().put("count", "0");
            default -> joint.fields().put("gas.hose.insideDiameter", "0");
        }
    }

    private static String decimal(double inches) {
        return String.format(Locale.ROOT, "%.4f", inches);
    }
}
