package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What has to add up within an answer, wherever it stands in it. Money to the last minor unit; quantities within what
 * rounding each of them to nine digits leaves.
 */
final class AddedUp {

    /** Half a unit of the ninth digit is 5e-9 of a number that begins with 1; the sum is rounded too. */
    private static final double NINE_DIGITS = 2e-8;

    /** What stands beside the parts of a total: the total, a bound of one of them, and two of them together. */
    private static final Set<String> NO_PARTS = Set.of("total", "storedGas", "surgeAndLeak");

    private static final Set<String> PARTS_OF_JOINTS = Set.of("seam", "filler", "arc", "gas", "preheat");

    /** What a joint in brief tells, by where a joint in full tells it. */
    private static final Map<String, String> IN_BRIEF =
            Map.of("/seam/length", "/seamLength", "/filler/consumed", "/filler", "/arc/time", "/arcTime");

    private final List<String> faults = new ArrayList<>();

    private AddedUp() {}

    /** What does not add up, in words; empty where everything does. */
    static List<String> faults(JsonNode answer) {
        AddedUp sums = new AddedUp();
        sums.visit("", answer);
        return sums.faults;
    }

    private void visit(String path, JsonNode node) {
        if (node.isNumber() && !Double.isFinite(node.doubleValue())) {
            faults.add(path + " is not finite");
        }
        if (node.isObject()) {
            if (node.path("total").isTextual() && node.path("lines").isArray()) {
                money(path, node);
            }
            if (isQuantity(node.path("total"))) {
                quantities(path, node);
            }
            if (node.has("perFrame") && node.has("forQuantity")) {
                frame(path, node);
            }
            if (node.has("gasShares")) {
                shares(path, node);
            }
            if (node.has("change") && node.has("lines")) {
                difference(path, node);
            }
            if (node.has("trailer")) {
                counts(path + ".trailer", node.path("trailer"));
            }
            node.properties().forEach(field -> visit(path + "." + field.getKey(), field.getValue()));
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            visit(path + "[" + i + "]", node.get(i));
        }
    }

    private void money(String path, JsonNode cost) {
        BigDecimal total = new BigDecimal(cost.path("total").textValue());
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonNode line : cost.path("lines")) {
            BigDecimal amount = new BigDecimal(line.path("amount").textValue());
            if (amount.scale() != total.scale()) {
                faults.add(path + ": " + amount + " in a total of " + total);
            }
            sum = sum.add(amount);
        }
        if (sum.compareTo(total) != 0) {
            faults.add(path + ": the lines make " + sum + ", the total is " + total);
        }
    }

    private static boolean isQuantity(JsonNode node) {
        return node.path("value").isNumber() && node.path("unit").isTextual();
    }

    /** Parts beside their total, in one unit. */
    private void quantities(String path, JsonNode parts) {
        double sum = 0;
        double size = 0;
        for (Map.Entry<String, JsonNode> part : parts.properties()) {
            JsonNode quantity = part.getValue();
            if (!isQuantity(quantity) || NO_PARTS.contains(part.getKey())) {
                continue;
            }
            if (!quantity.path("unit").equals(parts.path("total").path("unit"))) {
                faults.add(path + "." + part.getKey() + " is in another unit than its total");
            }
            sum += quantity.path("value").doubleValue();
            size += Math.abs(quantity.path("value").doubleValue());
        }
        same(path + ".total", sum, parts.path("total"), size);
    }

    private void frame(String path, JsonNode frame) {
        JsonNode perFrame = frame.path("perFrame");
        double quantity = frame.path("quantity").doubleValue();
        leaves("", perFrame, (name, value) -> {
            JsonNode order = frame.path("forQuantity").at(name);
            // rods are bought whole
            if (!name.endsWith("/rods")) {
                same(path + ".forQuantity" + name, number(value) * quantity, order, Math.abs(number(value) * quantity));
            } else if (order.doubleValue() != Math.rint(order.doubleValue())
                    || order.doubleValue() < number(value) * quantity * (1 - NINE_DIGITS)) {
                faults.add(path + ".forQuantity" + name + " is " + order + " for " + quantity + " × " + value);
            }
            joints(path, frame.path("joints"), name, value);
        });
        JsonNode cost = frame.path("cost");
        if (cost.has("total")) {
            BigDecimal total = new BigDecimal(cost.path("total").textValue());
            BigDecimal each =
                    total.divide(frame.path("quantity").decimalValue(), total.scale(), RoundingMode.HALF_EVEN);
            if (!cost.path("perFrame").textValue().equals(each.toPlainString())) {
                faults.add(path + ".cost.perFrame is not " + each);
            }
        }
    }

    /** Joints by their counts make the frame; what the order takes besides, its set-up and what leaks meanwhile, is left out. */
    private void joints(String path, JsonNode joints, String name, JsonNode ofFrame) {
        String part = name.substring(1, Math.max(1, name.indexOf('/', 1)));
        if (!PARTS_OF_JOINTS.contains(part)
                || name.equals("/gas/leak")
                || name.equals("/gas/total")
                || name.equals("/arc/energy")
                || name.equals("/preheat/electricity")
                || name.equals("/preheat/fuel")) {
            return;
        }
        String ofJoint = joints.path(0).has("seamLength") ? IN_BRIEF.get(name) : name;
        if (ofJoint == null) {
            return;
        }
        double sum = 0;
        double size = 0;
        for (JsonNode joint : joints) {
            double taken = number(joint.at(ofJoint)) * joint.path("count").doubleValue();
            sum += taken;
            size += Math.abs(taken);
        }
        same(path + ".perFrame" + name, sum, ofFrame, size);
    }

    private void shares(String path, JsonNode frame) {
        double sum = 0;
        for (JsonNode share : frame.path("gasShares")) {
            sum += share.doubleValue();
        }
        double gas = number(frame.at("/perFrame/gas/total"));
        if (gas > 0 && Math.abs(sum - 1) > NINE_DIGITS) {
            faults.add(path + ".gasShares make " + sum);
        }
    }

    private void difference(String path, JsonNode difference) {
        BigDecimal change = new BigDecimal(difference.path("change").textValue());
        BigDecimal lines = BigDecimal.ZERO;
        for (JsonNode line : difference.path("lines")) {
            lines = lines.add(new BigDecimal(line.path("change").asText("0")));
        }
        BigDecimal moved = BigDecimal.ZERO;
        for (JsonNode part : difference.path("moved")) {
            moved = moved.add(new BigDecimal(part.textValue()));
        }
        if (lines.compareTo(change) != 0 || difference.has("moved") && moved.compareTo(change) != 0) {
            faults.add(path + ": a change of " + change + ", of lines " + lines + ", moved " + moved);
        }
    }

    private void counts(String path, JsonNode trailer) {
        long read = trailer.path("read").longValue();
        if (read != trailer.path("done").longValue() + trailer.path("refused").longValue()) {
            faults.add(path + ": " + trailer);
        }
    }

    private interface Visitor {
        void visit(String name, JsonNode leaf);
    }

    private static void leaves(String name, JsonNode node, Visitor visitor) {
        if (node.isNumber() || isQuantity(node)) {
            visitor.visit(name, node);
        } else {
            node.properties().forEach(field -> leaves(name + "/" + field.getKey(), field.getValue(), visitor));
        }
    }

    private static double number(JsonNode leaf) {
        return isQuantity(leaf) ? leaf.path("value").doubleValue() : leaf.doubleValue();
    }

    private void same(String path, double sum, JsonNode told, double size) {
        if (!told.isNumber() && !isQuantity(told) || Math.abs(sum - number(told)) > NINE_DIGITS * size) {
            faults.add(path + " is " + told + ", its parts make " + sum);
        }
    }
}
