package org.seamtally.api;

import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.Variant;

/** Which of the types that an answer can have the request's Accept wants. */
final class Acceptable {

    private Acceptable() {}

    /**
     * The one that is wanted most; among equals the first.
     *
     * @param offered at least one
     * @throws ProblemException 406 where none of them is wanted
     */
    static MediaType of(Request request, MediaType... offered) {
        Variant chosen = null;
        try {
            chosen = request.selectVariant(Variant.mediaTypes(offered).build());
        } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
            // the framework fails on an Accept that breaks off: nothing is known to be wanted
        }
        if (chosen == null) {
            throw new ProblemException(Problems.report(Response.Status.NOT_ACCEPTABLE));
        }
        return chosen.getMediaType();
    }
}
