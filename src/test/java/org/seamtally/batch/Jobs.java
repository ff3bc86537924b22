package org.seamtally.batch;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.RefusedException;

/** Job files for tests, drawn from a seed: plugs and sleeves, some lines of which are refused. */
final class Jobs {

    static final Engine ENGINE = new Engine("test");

    static final FrameWork SI = group -> ENGINE.jobLines(group, UnitSystem.SI);

    static final String PLUG = "{\"kind\": \"plug\", \"holeDiameter\": \"10 mm\", \"depth\": \"3 mm\"}";

    static final String SLEEVE = "{\"kind\": \"tube-sleeve\", \"branch\": {\"outsideDiameter\": \"1.25 in\", \"wall\":"
            + " \"0.083 in\"}, \"sleeve\": {\"outsideDiameter\": \"1.5 in\", \"wall\": \"0.12 in\"}, \"fillet\":"
            + " {\"leg\": \"0.09 in\"}}";

    private Jobs() {}

    /** A file of so many frames; those refused are of three sorts. */
    static byte[] ndjson(long seed, int frames) {
        Random random = new Random(seed);
        StringBuilder file = new StringBuilder();
        for (int i = 0; i < frames; i++) {
            switch (random.nextInt(8)) {
                case 0 -> file.append("{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"holeDiameter\": \"10\"}]}}");
                case 1 -> file.append("{\"frame\": ");
                default -> file.append(frame(random, i));
            }
            file.append(random.nextInt(20) == 0 ? "\n\n" : "\n");
        }
        return file.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String frame(Random random, int number) {
        List<String> joints = new ArrayList<>();
        joints.add(PLUG);
        for (int more = random.nextInt(3); more > 0; more--) {
            joints.add(random.nextBoolean() ? PLUG : SLEEVE);
        }
        String currency = random.nextBoolean() ? "USD" : "EUR";
        return "{\"frame\": {\"name\": \"rack " + number + "\", \"quantity\": " + (1 + random.nextInt(5))
                + ", \"joints\": [" + String.join(", ", joints) + "]}, \"prices\": {\"currency\": \"" + currency
                + "\", \"labour\": \"60/h\", \"filler\": \"12.50/lb\", \"gas\": \"0.35/ft3\"}}";
    }

    static JobFrames open(byte[] file) throws IOException, RefusedException {
        return JobFiles.open(new ByteArrayInputStream(file), Form.NDJSON, null);
    }

    static List<JobFrame> frames(byte[] file) throws IOException, RefusedException {
        JobFrames frames = open(file);
        List<JobFrame> all = new ArrayList<>();
        for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
            all.add(frame);
        }
        return all;
    }
}
