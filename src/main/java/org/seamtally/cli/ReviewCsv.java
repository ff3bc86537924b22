package org.seamtally.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.seamtally.wire.AnalysisAnswer;
import org.seamtally.wire.FillerReviewAnswer;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.SteelReviewAnswer;

/** A review's fillers as CSV (RFC 4180), the units in the header, one filler a line. */
final class ReviewCsv {

    private ReviewCsv() {}

    static void print(SteelReviewAnswer answer, PrintWriter out) throws IOException {
        FillerReviewAnswer any = answer.fillers().get(0);
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        printer.printRecord(
                "filler",
                "rank",
                "cautioned for cracking",
                "preheat",
                "preheat temperature, " + answer.conditions().startTemperature().unit(),
                "CE(IIW), %",
                "CET, %",
                "Pcm, %",
                "ideal diameter, " + any.weldMetal().idealDiameter().diameter().unit(),
                "martensite start, "
                        + any.weldMetal().martensiteStart().andrews().unit(),
                "t8/5, " + any.cooling().t85().unit(),
                "hardness Maynier, HV",
                "hardness Yurioka, HV",
                "decided by");
        for (FillerReviewAnswer filler : answer.fillers()) {
            printer.printRecord(row(filler));
        }
        printer.flush();
    }

    private static List<Object> row(FillerReviewAnswer filler) {
        AnalysisAnswer weld = filler.weldMetal();
        return java.util.Arrays.asList(
                filler.filler(),
                filler.rank(),
                filler.cautionedForCracking() ? "yes" : "no",
                filler.preheat().verdict(),
                value(filler.preheat().advised()),
                equivalent(weld, "CE(IIW)"),
                equivalent(weld, "CET"),
                equivalent(weld, "Pcm"),
                value(weld.idealDiameter().diameter()),
                value(weld.martensiteStart().andrews()),
                value(filler.cooling().t85()),
                value(filler.hardness().maynier()),
                value(filler.hardness().yurioka()),
                filler.decidedBy());
    }

    private static Double equivalent(AnalysisAnswer weld, String symbol) {
        return weld.equivalent(symbol).orElseThrow().value();
    }

    private static Double value(Quantity quantity) {
        return quantity == null ? null : Double.valueOf(quantity.value());
    }
}
