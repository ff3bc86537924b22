package org.seamtally.load;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes made frames as a job file: only one of them is held at a time. */
interface JobFileWriter {

    void write(MadeFrame frame) throws IOException;

    /** After the last frame. */
    void end() throws IOException;

    /** A request a line. */
    final class Ndjson implements JobFileWriter {

        private final JsonGenerator json;

        Ndjson(OutputStream out) throws IOException {
            json = new JsonFactory().createGenerator(out);
            json.setRootValueSeparator(null);
        }

        @Override
        public void write(MadeFrame frame) throws IOException {
            json.writeStartObject();
            json.writeObjectFieldStart("frame");
            json.writeStringField("name", frame.name());
            json.writeNumberField("quantity", frame.quantity());
            json.writeArrayFieldStart("joints");
            for (MadeFrame.Joint joint : frame.joints()) {
                write(tree(joint.fields()));
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndObject();
            json.writeRaw('\n');
        }

        @Override
        public void end() throws IOException {
            json.flush();
        }

        private void write(Map<String, Object> tree) throws IOException {
            json.writeStartObject();
            for (Map.Entry<String, Object> field : tree.entrySet()) {
                json.writeFieldName(field.getKey());
                if (field.getValue() instanceof Map<?, ?> inner) {
                    write(checked(inner));
                } else if (MadeColumns.isWhole(field.getKey())) {
                    json.writeNumber(Integer.parseInt(field.getValue().toString()));
                } else {
                    json.writeString(field.getValue().toString());
                }
            }
            json.writeEndObject();
        }

        /** Paths with dots as objects within objects, figures with their unit. */
        private static Map<String, Object> tree(Map<String, String> fields) {
            Map<String, Object> tree = new LinkedHashMap<>();
            fields.forEach((path, text) -> {
                Map<String, Object> at = tree;
                String[] names = path.split("\\.");
                for (int i = 0; i < names.length - 1; i++) {
                    at = checked((Map<?, ?>) at.computeIfAbsent(names[i], name -> new LinkedHashMap<String, Object>()));
                }
                at.put(names[names.length - 1], (text + " " + MadeColumns.UNITS.get(path)).strip());
            });
            return tree;
        }

        @SuppressWarnings("unchecked")
        private static Map<String, Object> checked(Map<?, ?> map) {
            return (Map<String, Object>) map;
        }
    }

    /** A joint a row. */
    final class Csv implements JobFileWriter {

        private final CSVPrinter rows;

        Csv(OutputStream out) throws IOException {
            rows = new CSVPrinter(new BufferedWriter(new OutputStreamWriter(out, UTF_8)), CSVFormat.RFC4180);
            rows.print("frame");
            rows.print("quantity");
            for (String path : MadeColumns.UNITS.keySet()) {
                rows.print(MadeColumns.header(path));
            }
            rows.println();
        }

        @Override
        public void write(MadeFrame frame) throws IOException {
            for (MadeFrame.Joint joint : frame.joints()) {
                rows.print(frame.name());
                rows.print(frame.quantity());
                for (String path : MadeColumns.UNITS.keySet()) {
                    rows.print(joint.fields().getOrDefault(path, ""));
                }
                rows.println();
            }
        }

        @Override
        public void end() throws IOException {
            rows.flush();
        }
    }
}
