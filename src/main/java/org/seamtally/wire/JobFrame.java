package org.seamtally.wire;

import java.util.List;

/**
 * One frame of a job file, as far as reading it went: its request, or what was wrong with reading it.
 *
 * @param line in the file that it starts in, from 1
 * @param request frame estimate request as JSON in UTF-8; null where {@code problem} stands
 * @param places where the request's parts stand in a table; null where the file has a request a line
 * @param problem why there is no request; null where there is one
 */
public record JobFrame(long line, byte[] request, Places places, ProblemReport problem) {

    public JobFrame {
        if (line < 1 || (request == null) == (problem == null)) {
            throw new IllegalArgumentException("a frame has its line, and either a request or a problem");
        }
    }

    /**
     * Where the parts of a request made of a table's rows stand.
     *
     * @param lines the line of each joint's row, in the order of the joints
     * @param columns the table's header, as it was sent
     */
    public record Places(List<Long> lines, List<String> columns) {

        public Places {
            lines = List.copyOf(lines);
            columns = List.copyOf(columns);
        }
    }
}
