package org.seamtally.bare;

import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.util.Map;

/** Takes what an estimate is asked with, and works nothing out. */
@Path("/v1/frame-estimates")
public class FrameEstimates {

    /** @param request read, and not looked at */
    @POST
    public Map<String, Object> answer(Map<String, Object> request) {
        return Map.of("fields", request.size());
    }
}
