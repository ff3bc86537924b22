package org.seamtally.load;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** The fields that made frames use, and the unit of each: the same in a request and in a table's header. */
final class MadeColumns {

    /** Unit of each field's figures; empty where it has none. */
    static final Map<String, String> UNITS = units();

    private MadeColumns() {}

    private static Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        units.put("mark", "");
        units.put("count", "");
        units.put("kind", "");
        units.put("branch.outsideDiameter", "in");
        units.put("branch.wall", "in");
        units.put("main.outsideDiameter", "in");
        units.put("main.wall", "in");
        units.put("sleeve.outsideDiameter", "in");
        units.put("sleeve.wall", "in");
        units.put("plate.thickness", "mm");
        units.put("angle", "deg");
        units.put("length", "mm");
        units.put("holeDiameter", "in");
        units.put("depth", "in");
        units.put("fillet.leg", "mm");
        units.put("gas.hose.insideDiameter", "mm");
        units.put("gas.hose.length", "ft");
        return units;
    }

    /** The header of a field's column, such as {@code branch outside diameter [in]}. */
    static String header(String path) {
        String words = path.replace('.', ' ').replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
        String unit = UNITS.get(path);
        return unit.isEmpty() ? words : words + " [" + unit + "]";
    }

    /** Whether the field is a whole number in a request, without quotes. */
    static boolean isWhole(String path) {
        return path.equals("count");
    }
}
