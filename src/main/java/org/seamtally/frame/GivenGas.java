package org.seamtally.frame;

import static org.seamtally.frame.Settings.first;

import org.seamtally.catalogue.ShieldingGas;
import org.seamtally.gas.MeterPlace;

/**
 * Gas settings as given; null where left out.
 *
 * @param mixture what flows
 * @param flow m³/s at the reference state
 * @param preFlow s
 * @param postFlow s
 * @param referenceTemperature K
 * @param gasTemperature of the gas in the hose, K
 * @param supplyGaugePressure Pa above the atmosphere
 * @param torchBackPressure Pa above the atmosphere, at the set flow
 * @param meterAt where the meter sits
 * @param hoseBore m
 * @param hoseLength m
 * @param orificeDiameter m
 * @param nozzleDiameter m
 * @param leak m³/s at the reference state
 */
public record GivenGas(
        ShieldingGas mixture,
        Double flow,
        Double preFlow,
        Double postFlow,
        Double referenceTemperature,
        Double gasTemperature,
        Double supplyGaugePressure,
        Double torchBackPressure,
        MeterPlace meterAt,
        Double hoseBore,
        Double hoseLength,
        Double orificeDiameter,
        Double nozzleDiameter,
        Double leak) {

    /** Nothing given. */
    public static final GivenGas NONE =
            new GivenGas(null, null, null, null, null, null, null, null, null, null, null, null, null, null);

    /** These, and what they leave out from another. */
    public GivenGas over(GivenGas base) {
        return new GivenGas(
                first(mixture, base.mixture),
                first(flow, base.flow),
                first(preFlow, base.preFlow),
                first(postFlow, base.postFlow),
                first(referenceTemperature, base.referenceTemperature),
                first(gasTemperature, base.gasTemperature),
                first(supplyGaugePressure, base.supplyGaugePressure),
                first(torchBackPressure, base.torchBackPressure),
                first(meterAt, base.meterAt),
                first(hoseBore, base.hoseBore),
                first(hoseLength, base.hoseLength),
                first(orificeDiameter, base.orificeDiameter),
                first(nozzleDiameter, base.nozzleDiameter),
                first(leak, base.leak));
    }
}
