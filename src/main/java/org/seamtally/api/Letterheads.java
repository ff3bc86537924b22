package org.seamtally.api;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithParentName;
import java.util.Map;

/** Who a printed quote comes from: {@code seamtally.letterhead.NAME} for each shop. */
@ConfigMapping(prefix = "seamtally.letterhead")
public interface Letterheads {

    /** Name and address, in lines, by the name of the shop as tokens have it, {@code local} where the service is open. */
    @WithParentName
    Map<String, String> byShop();
}
