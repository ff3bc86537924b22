package org.seamtally.wire;

import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Gases;
import org.seamtally.frame.GivenGas;
import org.seamtally.quantity.Dimension;

/** Gas settings. */
@Schema(description = "Shielding gas and its way to the arc. Flow and volume are at the reference state.")
public record GasRequest(
        @Word(Words.GAS)
        @Schema(description = "Shielding gas, by its name in the catalogue. Left out: argon.", examples = "argon")
        Leaf mixture,

        @Within(value = Dimension.FLOW, min = "1 L/min", max = "60 L/min")
        @Schema(description = "Flow as set. Left out: 15 ft3/h.")
        Leaf flow,

        @Within(value = Dimension.TIME, min = "0 s", max = "60 s")
        @Schema(description = "Gas before each arc. Left out: 0.5 s.", examples = "0.5 s")
        Leaf preFlow,

        @Within(value = Dimension.TIME, min = "0 s", max = "5 min")
        @Schema(description = "Gas after each arc. Left out: 1 s per 10 A, at least 8 s.", examples = "9 s")
        Leaf postFlow,

        @Within(value = Dimension.TEMPERATURE, min = "-20 degC", max = "60 degC")
        @Schema(description = "Temperature of the reference state, at 1 atm. Left out: 70 degF.", examples = "70 degF")
        Leaf referenceTemperature,

        @Within(value = Dimension.TEMPERATURE, min = "-40 degC", max = "80 degC")
        @Schema(
                description = "Temperature of the gas in the hose. Left out: the reference temperature.",
                examples = "70 degF")
        Leaf temperature,

        @Within(value = Dimension.GAUGE_PRESSURE, min = "0.2 bar", max = "20 bar")
        @Schema(description = "Gauge pressure of the supply. Left out: 50 psi.")
        Leaf supplyGaugePressure,

        @Within(value = Dimension.GAUGE_PRESSURE, min = "1 mbar", max = "5 bar")
        @Schema(
                description = "Gauge pressure at the torch line while the set flow runs. Left out: 3 psi.",
                examples = "3 psi")
        Leaf torchBackPressure,

        @Word(Words.METER_PLACE)
        @Schema(
                description = "Where the meter sits: at the supply the hose fills to supply pressure between starts, at"
                        + " the machine nothing is stored behind it. Left out: supply.",
                examples = "supply")
        Leaf meterAt,

        @Valid @Schema(description = "The hose between meter and gas valve.")
        HoseRequest hose,

        @Within(value = Dimension.LENGTH, min = "0.1 mm", max = "10 mm")
        @Schema(
                description = "Bore of an orifice between valve and torch line. Left out: no orifice.",
                examples = "0.025 in")
        Leaf orificeDiameter,

        @Within(value = Dimension.LENGTH, min = "3 mm", max = "40 mm")
        @Schema(description = "Bore of the torch's gas nozzle. Left out: 1/2 in.", examples = "0.5 in")
        Leaf nozzleDiameter,

        @Within(value = Dimension.FLOW, min = "0 L/min", max = "60 L/min")
        @Schema(description = "Flow lost to leaks through all the labour time. Left out: none.", examples = "0 L/min")
        Leaf leak) {

    static GivenGas given(GasRequest request) {
        return request == null
                ? GivenGas.NONE
                : new GivenGas(
                        request.mixture == null
                                ? null
                                : Gases.find(request.mixture.text()).orElseThrow(),
                        Read.quantity(request.flow, Dimension.FLOW),
                        Read.quantity(request.preFlow, Dimension.TIME),
                        Read.quantity(request.postFlow, Dimension.TIME),
                        Read.quantity(request.referenceTemperature, Dimension.TEMPERATURE),
                        Read.quantity(request.temperature, Dimension.TEMPERATURE),
                        Read.quantity(request.supplyGaugePressure, Dimension.GAUGE_PRESSURE),
                        Read.quantity(request.torchBackPressure, Dimension.GAUGE_PRESSURE),
                        Words.meterPlace(request.meterAt),
                        request.hose == null ? null : Read.length(request.hose.insideDiameter()),
                        request.hose == null ? null : Read.length(request.hose.length()),
                        Read.length(request.orificeDiameter),
                        Read.length(request.nozzleDiameter),
                        Read.quantity(request.leak, Dimension.FLOW));
    }
}
