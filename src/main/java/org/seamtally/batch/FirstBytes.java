package org.seamtally.batch;

import java.util.List;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

/** Files of another sort, told by how they begin, before anything is made of them. */
final class FirstBytes {

    /** Bytes that it takes to tell. */
    static final int LOOKED_AT = 4;

    private record Sort(int[] start, String hint) {}

    private static final List<Sort> SORTS = List.of(
            new Sort(new int[] {'P', 'K', 3, 4}, "this is a workbook or a ZIP archive: export the table as CSV, UTF-8"),
            new Sort(new int[] {'P', 'K', 5, 6}, "this is an empty ZIP archive: export the table as CSV, UTF-8"),
            new Sort(new int[] {0xd0, 0xcf, 0x11, 0xe0}, "this is a workbook: export the table as CSV, UTF-8"),
            new Sort(new int[] {0x1f, 0x8b}, "this is compressed with gzip: unpack it first"),
            new Sort(new int[] {0xff, 0xfe}, "this is UTF-16: save it as UTF-8"),
            new Sort(new int[] {0xfe, 0xff}, "this is UTF-16: save it as UTF-8"));

    private FirstBytes() {}

    /**
     * Looks at the start of a file.
     *
     * @param start its first bytes
     * @param length how many of them there are, {@link #LOOKED_AT} where the file is that long
     * @throws RefusedException where it is no text, or not in UTF-8
     */
    static void check(byte[] start, int length) throws RefusedException {
        for (Sort sort : SORTS) {
            if (begins(start, length, sort.start)) {
                throw refused(Violation.Key.NOT_THIS_FORM, sort.hint);
            }
        }
        for (int i = 0; i < length; i++) {
            if (start[i] == 0) {
                throw refused(Violation.Key.NOT_THIS_FORM, "this is no text in UTF-8: it has NUL bytes at its start");
            }
        }
    }

    /** A whole file's fault. */
    static RefusedException refused(String key, String message) {
        return new RefusedException(ProblemReport.invalid(List.of(new Violation("", key, message, null, null))));
    }

    private static boolean begins(byte[] start, int length, int[] wanted) {
        if (length < wanted.length) {
            return false;
        }
        for (int i = 0; i < wanted.length; i++) {
            if ((start[i] & 0xff) != wanted[i]) {
                return false;
            }
        }
        return true;
    }
}
