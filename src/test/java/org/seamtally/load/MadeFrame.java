package org.seamtally.load;

import java.util.LinkedHashMap;
import java.util.List;

/**
 * A frame of a made job file.
 *
 * @param quantity how many are ordered
 */
record MadeFrame(String name, int quantity, List<Joint> joints) {

    /**
     * A joint: what stands in its fields, by their path in a request.
     *
     * @param fields in the units of {@link MadeColumns}
     */
    record Joint(LinkedHashMap<String, String> fields) {

        String kind() {
            return fields.get("kind");
        }
    }
}
