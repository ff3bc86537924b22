package org.seamtally.preheat;

import java.util.OptionalDouble;

/**
 * How a joint is to be preheated.
 *
 * @param temperature K, at least the ambient's and at most 600 °C
 * @param ambient K
 * @param zone width heated beyond the joint, m, positive
 * @param hold time kept at temperature, s, 0 or more
 * @param source flame or electricity
 * @param heatingEfficiency share of what is supplied that reaches the steel, above 0, at most 1
 * @param sourcePower what the source gives, W; empty: heat-up time and the losses during it are left out
 */
public record PreheatPlan(
        double temperature,
        double ambient,
        double zone,
        double hold,
        HeatSource source,
        double heatingEfficiency,
        OptionalDouble sourcePower) {

    /** @throws IllegalArgumentException where a figure is out of its range */
    public PreheatPlan {
        if (!(ambient > 0 && temperature >= ambient && temperature <= SteelHeat.GREATEST_TEMPERATURE)) {
            throw new IllegalArgumentException(
                    "preheat to " + temperature + " K from " + ambient + " K: at least ambient, at most 873.15 K");
        }
        if (!(zone > 0 && hold >= 0)) {
            throw new IllegalArgumentException("zone " + zone + " m, hold " + hold + " s");
        }
        if (!(heatingEfficiency > 0 && heatingEfficiency <= 1)) {
            throw new IllegalArgumentException("heating efficiency " + heatingEfficiency);
        }
        sourcePower.ifPresent(power -> {
            if (!(power > 0)) {
                throw new IllegalArgumentException("source power " + power + " W");
            }
        });
    }
}
