package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenGas;
import org.seamtally.quantity.Dimension;

/** One set-up of a comparison. */
@Schema(description = "One set-up to compare; what it leaves out it takes from the shared gas settings.")
public record SetUpRequest(
        @NotNull @Text(max = 60) @Schema(description = "As the reader knows it; no two alike.", examples = "small bore")
        Leaf name,

        @Valid @Schema(description = "The hose between meter and gas valve.")
        HoseRequest hose,

        @Within(value = Dimension.GAUGE_PRESSURE, min = "0.2 bar", max = "20 bar")
        @Schema(description = "Gauge pressure of the supply.")
        Leaf supplyGaugePressure,

        @Within(value = Dimension.LENGTH, min = "0.1 mm", max = "10 mm")
        @Schema(description = "Bore of an orifice between valve and torch line.", examples = "0.025 in")
        Leaf orificeDiameter,

        @Word(Words.METER_PLACE) @Schema(description = "Where the meter sits.", examples = "supply")
        Leaf meterAt,

        @Within(value = Dimension.LENGTH, min = "3 mm", max = "40 mm")
        @Schema(description = "Bore of the torch's gas nozzle.", examples = "0.5 in")
        Leaf nozzleDiameter,

        @Sum @Schema(description = "What it costs to get, in the request's currency.", examples = "68.00")
        Leaf price) {

    GivenGas over(GivenGas shared) {
        return new GivenGas(
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        Read.quantity(supplyGaugePressure, Dimension.GAUGE_PRESSURE),
                        null,
                        Words.meterPlace(meterAt),
                        hose == null ? null : Read.length(hose.insideDiameter()),
                        hose == null ? null : Read.length(hose.length()),
                        Read.length(orificeDiameter),
                        Read.length(nozzleDiameter),
                        null)
                .over(shared);
    }
}
