package org.seamtally.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.GasAnswer;
import org.seamtally.wire.JointAnswer;
import org.seamtally.wire.Quantity;

/** A quote's joints as CSV (RFC 4180), the units in the header, one joint a line. */
final class EstimateCsv {

    private EstimateCsv() {}

    static void print(FrameEstimateAnswer answer, PrintWriter out) throws IOException {
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        boolean first = true;
        for (JointAnswer joint : answer.joints()) {
            Row row = Row.of(joint);
            if (first) {
                printer.printRecord(row.header);
                first = false;
            }
            printer.printRecord(row.cells);
        }
        printer.flush();
    }

    /** A joint's cells and what stands above them. */
    private record Row(List<Object> header, List<Object> cells) {

        static Row of(JointAnswer joint) {
            Row row = new Row(new ArrayList<>(), new ArrayList<>());
            row.plain("joint", joint.mark())
                    .plain("count", joint.count())
                    .plain("kind", joint.kind())
                    .plain("procedure", joint.procedure())
                    .quantity("seam length", joint.seam().length())
                    .quantity("deposit volume", joint.seam().depositVolume())
                    .quantity("filler mass", joint.filler().mass())
                    .quantity("filler consumed", joint.filler().consumed())
                    .plain("rods", joint.filler().rods())
                    .quantity("current", joint.arc().current())
                    .quantity("arc time", joint.arc().time())
                    .quantity("tack time", joint.arc().tackTime());
            return row.gas(joint.gas());
        }

        private Row gas(GasAnswer gas) {
            return quantity("gas arc", gas.arc())
                    .quantity("gas pre-flow", gas.preFlow())
                    .quantity("gas start surge", gas.startSurge())
                    .quantity("gas post-flow", gas.postFlow())
                    .quantity("gas back purge", gas.backPurge())
                    .quantity("gas leak", gas.leak())
                    .quantity("gas total", gas.total())
                    .plain("starts", gas.starts());
        }

        private Row plain(String name, Object value) {
            header.add(name);
            cells.add(value);
            return this;
        }

        private Row quantity(String name, Quantity quantity) {
            return plain(name + " [" + quantity.unit() + "]", quantity.value());
        }
    }
}
