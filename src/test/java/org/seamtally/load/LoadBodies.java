package org.seamtally.load;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Random;

/**
 * Bodies of requests for load tests, one after the other and none twice: tubes of their own a joint, and hoses drawn from
 * twelve, as a shop has them, or each a new one. The same seed makes the same bodies.
 */
final class LoadBodies {

    private static final JsonMapper JSON = new JsonMapper();
    private static final double[] BORES = {0.1875, 0.25, 0.3125};
    private static final double[] LENGTHS = {12.5, 25, 37.5, 50};

    private final Random random;
    private final boolean newSetUps;

    /** @param newSetUps whether each joint has a hose that nobody had before */
    LoadBodies(long seed, boolean newSetUps) {
        this.random = new Random(seed);
        this.newSetUps = newSetUps;
    }

    /** Prints a frame. @param args how many joints it has */
    public static void main(String[] args) {
        System.out.println(new LoadBodies(1, false).frame(Integer.parseInt(args[0])));
    }

    /** A frame of so many joints, no two alike, with its steel and prices. */
    String frame(int joints) {
        ObjectNode request = JSON.createObjectNode();
        ObjectNode frame = request.putObject("frame");
        frame.put("name", "Frame " + random.nextInt(1_000_000));
        frame.put("quantity", 1 + random.nextInt(9));
        ArrayNode all = frame.putArray("joints");
        for (int i = 1; i <= joints; i++) {
            joint(all.addObject(), i);
        }
        request.putObject("steel").put("base", "4130");
        request.putObject("filler").put("classification", "ER80S-D2");
        request.putObject("preheat").put("temperature", "300 degF").put("source", "propane");
        ObjectNode prices = request.putObject("prices");
        prices.put("currency", "USD");
        prices.put("labour", "65.00/h");
        prices.put("filler", "12.50/lb");
        prices.put("gas", "0.35/ft3");
        prices.put("electricity", "0.16/kWh");
        prices.put("fuel", "2.10/lb");
        prices.put("margin", 0.2);
        return request.toString();
    }

    private void joint(ObjectNode joint, int number) {
        joint.put("mark", "J" + number);
        joint.put("count", 1 + random.nextInt(4));
        joint.put("kind", "tube-to-tube");
        double branch = 0.75 + random.nextDouble();
        tube(joint.putObject("branch"), branch);
        // one in four meets a tube of its own size
        tube(joint.putObject("main"), random.nextInt(4) == 0 ? branch : branch + random.nextDouble());
        joint.put("angle", quantity(35 + 55 * random.nextDouble(), "deg"));
        joint.put("preheated", random.nextInt(4) == 0);
        hose(joint.putObject("gas").putObject("hose"));
    }

    private static void tube(ObjectNode tube, double outsideDiameter) {
        tube.put("outsideDiameter", quantity(outsideDiameter, "in"));
        tube.put("wall", "0.095 in");
    }

    private void hose(ObjectNode hose) {
        double length = LENGTHS[random.nextInt(LENGTHS.length)];
        hose.put("insideDiameter", quantity(BORES[random.nextInt(BORES.length)], "in"));
        hose.put("length", quantity(newSetUps ? length + random.nextDouble() : length, "ft"));
    }

    /** Three set-ups of a comparison under one duty. */
    String comparison() {
        ObjectNode request = JSON.createObjectNode();
        ObjectNode duty = request.putObject("duty");
        duty.put("startsPerShift", 50 + random.nextInt(200));
        duty.put("burnTime", quantity(5 + 20 * random.nextDouble(), "s"));
        duty.put("arcOffTime", quantity(20 + 40 * random.nextDouble(), "s"));
        duty.put("shiftsPerYear", 230);
        duty.put("current", "90 A");
        ArrayNode setUps = request.putArray("setUps");
        for (int i = 1; i <= 3; i++) {
            ObjectNode setUp = setUps.addObject();
            setUp.put("name", "Set-up " + i);
            hose(setUp.putObject("hose"));
        }
        return request.toString();
    }

    private static String quantity(double value, String unit) {
        return String.format(Locale.ROOT, "%.5f %s", value, unit);
    }
}
