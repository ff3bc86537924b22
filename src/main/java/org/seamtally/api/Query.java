package org.seamtally.api;

import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.List;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.ProblemReport;

/** The query parameters: units, and no other. */
final class Query {

    private static final List<String> UNITS =
            Arrays.stream(UnitSystem.values()).map(UnitSystem::word).toList();

    private Query() {}

    /**
     * The units asked for; SI where none are.
     *
     * @throws ProblemException 400 for another word or another parameter
     */
    static UnitSystem units(UriInfo uri) {
        MultivaluedMap<String, String> parameters = uri.getQueryParameters();
        for (String name : parameters.keySet()) {
            if (!name.equals("units")) {
                throw new ProblemException(ProblemReport.badQuery(
                        name, parameters.getFirst(name), List.of("left out: units alone is taken")));
            }
        }
        List<String> given = parameters.getOrDefault("units", List.of(UnitSystem.SI.word()));
        if (given.size() != 1 || !UNITS.contains(given.get(0))) {
            throw new ProblemException(ProblemReport.badQuery("units", String.join(",", given), UNITS));
        }
        return UnitSystem.of(given.get(0));
    }
}
