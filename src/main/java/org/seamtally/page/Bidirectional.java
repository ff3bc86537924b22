package org.seamtally.page;

import com.openhtmltopdf.bidi.BidiReorderer;
import com.openhtmltopdf.bidi.BidiSplitter;
import com.openhtmltopdf.bidi.BidiTextRun;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.text.Bidi;
import java.util.stream.IntStream;

/** Texts that run from right to left, or both ways, by Java's own bidirectional algorithm. */
final class Bidirectional {

    private Bidirectional() {}

    static void addTo(PdfRendererBuilder builder) {
        builder.useUnicodeBidiSplitter(Splitter::new);
        builder.useUnicodeBidiReorderer(new Reorderer());
    }

    private static byte direction(int level) {
        return level % 2 == 0 ? BidiSplitter.LTR : BidiSplitter.RTL;
    }

    /** Parts a paragraph into runs of one direction, in the order they are seen. */
    private static final class Splitter implements BidiSplitter {

        private Bidi bidi;
        private Integer[] seen;

        @Override
        public void setParagraph(String text, byte direction) {
            bidi = new Bidi(
                    text,
                    switch (direction) {
                        case BidiSplitter.LTR -> Bidi.DIRECTION_LEFT_TO_RIGHT;
                        case BidiSplitter.RTL -> Bidi.DIRECTION_RIGHT_TO_LEFT;
                        default -> Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT;
                    });
            int runs = bidi.getRunCount();
            byte[] levels = new byte[runs];
            for (int run = 0; run < runs; run++) {
                levels[run] = (byte) bidi.getRunLevel(run);
            }
            seen = IntStream.range(0, runs).boxed().toArray(Integer[]::new);
            if (runs > 1) {
                // an empty paragraph has no runs, and is refused
                Bidi.reorderVisually(levels, 0, seen, 0, runs);
            }
        }

        @Override
        public int countTextRuns() {
            return seen.length;
        }

        @Override
        public BidiTextRun getVisualRun(int place) {
            int run = seen[place];
            int start = bidi.getRunStart(run);
            return new BidiTextRun(start, bidi.getRunLimit(run) - start, direction(bidi.getRunLevel(run)));
        }

        @Override
        public byte getBaseDirection(String text) {
            return new Bidi(text, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT).baseIsLeftToRight()
                    ? BidiSplitter.LTR
                    : BidiSplitter.RTL;
        }
    }

    /** Turns a run round; letters that change their form with their neighbours are left as they are. */
    private static final class Reorderer implements BidiReorderer {

        @Override
        public String reorderRTLTextToLTR(String text) {
            return new StringBuilder(text).reverse().toString();
        }

        @Override
        public String shapeText(String text) {
            return text;
        }

        @Override
        public String deshapeText(String text) {
            return text;
        }

        @Override
        public boolean isLiveImplementation() {
            return true;
        }
    }
}
