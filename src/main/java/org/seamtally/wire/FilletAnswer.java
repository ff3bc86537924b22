package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.metal.FilletZone.Throat;
import org.seamtally.quantity.Dimension;

/** A fillet against the code's rule. */
@Schema(
        description =
                "The fillet's legs, zone by zone along the real seam, against AWS D1.1's tubular clause for a throat of"
                        + " 0.7 of the thinner wall (from memory). No load was considered: meeting it is no acceptance.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FilletAnswer(
        @Schema(description = "The rule.", required = true) String throatRule,

        @Schema(description = "Whether every zone that takes a fillet meets it.", required = true)
        boolean meets,

        @Schema(
                description =
                        "Least leg that meets it in every zone, the root gap added; absent where no zone takes a fillet or no leg that"
                                + " fits the edge meets it.")
        Quantity leastLeg,

        @Schema(description = "Least effective throat up to 135 deg; absent where all of the seam is wider.")
        Quantity leastThroat,

        @Schema(description = "The zones that the seam has.", required = true)
        List<Zone> zones,

        @Schema(
                description = "Share of the seam outside 60 to 135 deg, the code's range of skewed fillets.",
                required = true,
                minimum = "0",
                maximum = "1")
        double outsideShare,

        @Schema(description = "What keeps the seam out of the code's scope.", required = true)
        List<String> scope) {

    private static final Throat RULE = Throat.SEVEN_TENTHS_OF_WALL;

    private static final String RULE_TEXT =
            "AWS D1.1, fillets in tubular T-, Y- and K-connections, throat " + RULE.ofWall() + " of the thinner wall";

    /** One zone. */
    @Schema(description = "One zone of the seam by dihedral angle.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Zone(
            @Schema(description = "Where it starts.", required = true)
            Quantity from,

            @Schema(description = "Where it ends.", required = true)
            Quantity to,

            @Schema(description = "Share of the seam's length.", required = true, minimum = "0", maximum = "1")
            double share,

            @Schema(description = "Least effective throat in it up to 135 deg; absent where all of it is wider.")
            Quantity leastThroat,

            @Schema(description = "Leg that the rule asks for; absent where it asks for a bevelled edge, no fillet.")
            Quantity legAskedFor,

            @Schema(
                    description =
                            "Whether the leg, less the root gap, meets it; absent where the rule takes no fillet.")
            Boolean meets) {

        static Zone of(FilletAdequacy.Zone zone, Shown shown) {
            FilletAdequacy.Demand demand = zone.demands().get(RULE);
            return new Zone(
                    shown.angle(Math.toRadians(zone.zone().from())),
                    shown.angle(Math.toRadians(zone.zone().to())),
                    Shown.number(zone.share()),
                    shown.of(Dimension.LENGTH, zone.leastThroat()),
                    demand == null ? null : shown.length(demand.leg()),
                    demand == null ? null : demand.met());
        }
    }

    static FilletAnswer of(FilletAdequacy fillet, Shown shown) {
        return new FilletAnswer(
                RULE_TEXT,
                fillet.meets(RULE),
                shown.of(Dimension.LENGTH, fillet.leastLeg(RULE)),
                shown.of(Dimension.LENGTH, fillet.leastThroat()),
                fillet.zones().stream().map(zone -> Zone.of(zone, shown)).toList(),
                Shown.number(Math.min(1, fillet.outside60To135())),
                shown.of(fillet.scope()));
    }
}
