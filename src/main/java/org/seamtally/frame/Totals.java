package org.seamtally.frame;

import java.util.Map;
import java.util.TreeMap;
import org.seamtally.arc.FillerUse;
import org.seamtally.gas.GasUse;
import org.seamtally.preheat.HeatSource;
import org.seamtally.preheat.PreheatUse;

/**
 * What a frame, or an order of frames, takes.
 *
 * @param seamLength m, plugs left out
 * @param depositVolume m³
 * @param plugs number of plugs
 * @param filler deposited and consumed
 * @param arcTime s, tacks left out
 * @param tackTime s
 * @param electricity drawn by the power source, J
 * @param gas by where it goes
 * @param storedGas what the hose holds above its flowing state, over all starts: the bound of the start surge, m³
 * @param preheatContent heat stored in the steel, J
 * @param preheatEnergy supplied by flame or electricity, J
 * @param preheatFuel mass by fuel, kg
 * @param preheatElectricity J
 * @param labour by kind
 */
public record Totals(
        double seamLength,
        double depositVolume,
        long plugs,
        FillerUse filler,
        double arcTime,
        double tackTime,
        double electricity,
        GasUse gas,
        double storedGas,
        double preheatContent,
        double preheatEnergy,
        Map<String, Double> preheatFuel,
        double preheatElectricity,
        Labour labour) {

    static final Totals NONE =
            new Totals(0, 0, 0, FillerUse.NONE, 0, 0, 0, GasUse.NONE, 0, 0, 0, Map.of(), 0, Labour.NONE);

    /** Sum of all the joints of a frame. */
    static Totals of(Iterable<JointEstimate> joints) {
        Totals sum = NONE;
        for (JointEstimate joint : joints) {
            sum = sum.plus(of(joint).times(joint.count()));
        }
        return sum;
    }

    private static Totals of(JointEstimate joint) {
        Totals work = new Totals(
                joint.seam().length(),
                joint.seam().depositVolume(),
                joint.seam().plug() ? 1 : 0,
                joint.filler(),
                joint.arc().time(),
                joint.arc().tackTime(),
                joint.arc().electricity(),
                joint.gas(),
                joint.storedGas() * joint.gas().starts(),
                0,
                0,
                Map.of(),
                0,
                joint.labour().withoutPreheat());
        return joint.preheat()
                .map(use -> work.plus(
                        ofPreheat(use, joint.welder().preheat().orElseThrow().source())))
                .orElse(work);
    }

    /** What one joint's preheat takes, its time included. */
    static Totals ofPreheat(PreheatUse use, HeatSource source) {
        Map<String, Double> fuel = use.fuelMass().isPresent()
                ? Map.of(source.name(), use.fuelMass().getAsDouble())
                : Map.of();
        return new Totals(
                0,
                0,
                0,
                FillerUse.NONE,
                0,
                0,
                0,
                GasUse.NONE,
                0,
                use.content(),
                use.energy(),
                fuel,
                fuel.isEmpty() ? use.energy() : 0,
                new Labour(0, 0, 0, 0, use.time()));
    }

    /** Both together. */
    Totals plus(Totals other) {
        Map<String, Double> fuel = preheatFuel;
        if (!other.preheatFuel.isEmpty()) {
            fuel = new TreeMap<>(preheatFuel);
            for (Map.Entry<String, Double> entry : other.preheatFuel.entrySet()) {
                fuel.merge(entry.getKey(), entry.getValue(), Double::sum);
            }
        }
        return new Totals(
                seamLength + other.seamLength,
                depositVolume + other.depositVolume,
                plugs + other.plugs,
                filler.plus(other.filler),
                arcTime + other.arcTime,
                tackTime + other.tackTime,
                electricity + other.electricity,
                gas.plus(other.gas),
                storedGas + other.storedGas,
                preheatContent + other.preheatContent,
                preheatEnergy + other.preheatEnergy,
                fuel,
                preheatElectricity + other.preheatElectricity,
                labour.plus(other.labour));
    }

    /** The same, with the order's set-up and what leaks meanwhile. */
    Totals withSetUp(double setUp, GasUse leaked) {
        return new Totals(
                seamLength,
                depositVolume,
                plugs,
                filler,
                arcTime,
                tackTime,
                electricity,
                gas.plus(leaked),
                storedGas,
                preheatContent,
                preheatEnergy,
                preheatFuel,
                preheatElectricity,
                labour.plus(new Labour(0, 0, 0, setUp, 0)));
    }

    /** So many of them. */
    Totals times(int count) {
        Map<String, Double> fuel = new TreeMap<>();
        preheatFuel.forEach((name, mass) -> fuel.put(name, mass * count));
        return new Totals(
                seamLength * count,
                depositVolume * count,
                plugs * count,
                filler.times(count),
                arcTime * count,
                tackTime * count,
                electricity * count,
                gas.times(count),
                storedGas * count,
                preheatContent * count,
                preheatEnergy * count,
                fuel,
                preheatElectricity * count,
                labour.times(count));
    }
}
