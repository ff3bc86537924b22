package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Fuels;
import org.seamtally.frame.GivenPreheat;
import org.seamtally.preheat.HeatSource;
import org.seamtally.quantity.Dimension;

/** Preheat settings. */
@Schema(description = "How joints are preheated; only those that ask for it are.")
public record PreheatRequest(
        @Within(value = Dimension.TEMPERATURE, min = "-30 degC", max = "600 degC")
        @Schema(
                description =
                        "Temperature to reach, at least ambient. Needed in a quote where a joint is preheated; left out"
                                + " where a preheat is asked about by itself: the recommended one.")
        Leaf temperature,

        @Within(value = Dimension.TEMPERATURE, min = "-30 degC", max = "60 degC")
        @Schema(description = "Temperature before. Left out: 68 degF.", examples = "68 degF")
        Leaf ambient,

        @Within(value = Dimension.LENGTH, min = "5 mm", max = "1 m")
        @Schema(description = "Width heated beyond the joint. Left out: 3 in.", examples = "3 in")
        Leaf zone,

        @Within(value = Dimension.TIME, min = "0 s", max = "10 h")
        @Schema(description = "Time kept at temperature. Left out: none.", examples = "2 min")
        Leaf hold,

        @Word(Words.HEAT_SOURCE)
        @Schema(description = "Fuel of the catalogue, or electricity. Left out: propane.", examples = "propane")
        Leaf source,

        @Share(min = "0.01", max = "1")
        @Schema(description = "Share of what is supplied that reaches the steel. Left out: 0.25.", examples = "0.25")
        Leaf heatingEfficiency,

        @Within(value = Dimension.POWER, min = "10 W", max = "1000 kW")
        @Schema(
                description =
                        "What the source gives. Left out: heat-up time and the losses during it are left out too.")
        Leaf sourcePower) {

    static GivenPreheat given(PreheatRequest request) {
        return request == null
                ? GivenPreheat.NONE
                : new GivenPreheat(
                        Read.quantity(request.temperature, Dimension.TEMPERATURE),
                        Read.quantity(request.ambient, Dimension.TEMPERATURE),
                        Read.length(request.zone),
                        Read.quantity(request.hold, Dimension.TIME),
                        request.source == null ? null : source(request.source.text()),
                        Read.number(request.heatingEfficiency),
                        Read.quantity(request.sourcePower, Dimension.POWER));
    }

    private static HeatSource source(String word) {
        return word.equalsIgnoreCase(HeatSource.ELECTRICITY)
                ? HeatSource.electricity()
                : HeatSource.of(Fuels.find(word).orElseThrow());
    }
}
