package org.seamtally.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.ProgramVersion;

/**
 * A small frame worked out beside the start of the service, so that the first who asks does not wait until classes,
 * constraints, tables and the JSON reader and writer have been read: half as long as the start itself otherwise.
 */
final class FirstEstimate {

    /** One joint of each kind, priced and preheated. */
    static final byte[] FRAME = """
            {"frame": {"joints": [
              {"kind": "tube-to-tube", "branch": {"outsideDiameter": "1 in", "wall": "0.065 in"},
               "main": {"outsideDiameter": "1.5 in", "wall": "0.095 in"}, "angle": "60 deg", "preheated": true},
              {"kind": "tube-to-plate", "branch": {"outsideDiameter": "1 in", "wall": "0.065 in"},
               "plate": {"thickness": "4 mm"}},
              {"kind": "plate-fillet", "plate": {"thickness": "4 mm"}, "length": "60 mm"},
              {"kind": "tube-sleeve", "branch": {"outsideDiameter": "1.25 in", "wall": "0.083 in"},
               "sleeve": {"outsideDiameter": "1.5 in", "wall": "0.12 in"}},
              {"kind": "plug", "holeDiameter": "6 mm", "depth": "2 mm"}
            ]}, "preheat": {"temperature": "300 degF"}, "prices": {"currency": "USD", "labour": "65.00/h"}}
            """.getBytes(StandardCharsets.UTF_8);

    private FirstEstimate() {}

    /** Begins it on a thread of its own; on a single processor there is nothing beside the start, and nothing is begun. */
    static void beside(Runtime machine) {
        if (machine.availableProcessors() > 1) {
            Thread thread = new Thread(() -> answer(), "first estimate");
            thread.setDaemon(true);
            thread.start();
        }
    }

    /** Its answer, written: an engine of its own, since nobody is to find its gas start known. */
    static byte[] answer() {
        try {
            Outcome<FrameEstimateAnswer> outcome =
                    new Engine(ProgramVersion.text()).frameEstimate(new ByteArrayInputStream(FRAME), UnitSystem.SI);
            return Json.mapper().writeValueAsBytes(((Outcome.Answered<FrameEstimateAnswer>) outcome).answer());
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be read", e);
        }
    }
}
