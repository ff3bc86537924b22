package org.seamtally.page;

import java.util.List;

/**
 * A row of a printed table.
 *
 * @param cells texts, from left to right
 */
record Row(List<String> cells) {

    static Row of(String... cells) {
        return new Row(List.of(cells));
    }
}
