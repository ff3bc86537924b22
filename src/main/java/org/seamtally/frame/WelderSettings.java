package org.seamtally.frame;

import java.util.Optional;
import org.seamtally.gas.BackPurge;
import org.seamtally.gas.GasTimes;
import org.seamtally.preheat.PreheatPlan;

/**
 * What is set and picked up at one joint besides the arc, defaults filled in.
 *
 * @param base the base steel's name
 * @param filler the rod's classification
 * @param rodDiameter m
 * @param gas the shielding gas's name
 * @param flow m³/s at the reference state
 * @param nozzleDiameter of the torch's gas nozzle, m
 * @param times before and after each arc
 * @param backPurge through the tube, where asked for
 * @param preheat empty where there is none
 */
public record WelderSettings(
        String base,
        String filler,
        double rodDiameter,
        String gas,
        double flow,
        double nozzleDiameter,
        GasTimes times,
        Optional<BackPurge> backPurge,
        Optional<PreheatPlan> preheat) {}
