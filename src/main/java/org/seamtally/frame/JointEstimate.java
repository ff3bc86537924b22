package org.seamtally.frame;

import java.util.List;
import java.util.Optional;
import org.seamtally.arc.ArcSettings;
import org.seamtally.arc.ArcWork;
import org.seamtally.arc.FillerUse;
import org.seamtally.gas.GasUse;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.preheat.PreheatUse;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;

/**
 * What one joint takes; figures are for one of its kind.
 *
 * @param mark what the drawing calls it
 * @param count how many of them the frame has
 * @param procedure reference of the qualified procedure
 * @param joint the joint, defaults filled in
 * @param tacks tack welds
 * @param segments arc-on stretches
 * @param settings of the arc
 * @param welder what is set and picked up besides the arc
 * @param seam length, deposit, dihedral angle
 * @param filler deposited and consumed
 * @param arc time, speed, energy
 * @param gas by where it goes
 * @param storedGas what the hose holds above its flowing state before each start: the bound of a start's surge, m³
 * @param preheat empty where there is none
 * @param labour this joint's own, set-up left out
 * @param fillet the legs against the code's rule; empty for a plug
 * @param advisedPreheat what a preheat that is advised, and not asked for, would take; in no total
 * @param cautions what to look at
 */
public record JointEstimate(
        String mark,
        int count,
        Optional<String> procedure,
        Joint joint,
        int tacks,
        int segments,
        ArcSettings settings,
        WelderSettings welder,
        Seam seam,
        FillerUse filler,
        ArcWork arc,
        GasUse gas,
        double storedGas,
        Optional<PreheatUse> preheat,
        Labour labour,
        Optional<FilletAdequacy> fillet,
        Optional<AdvisedPreheat> advisedPreheat,
        List<Caution> cautions) {}
