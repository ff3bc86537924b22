package org.seamtally.arc;

import java.util.OptionalDouble;
import org.seamtally.seam.Seam;

/**
 * What the arc does on one joint.
 *
 * @param time with the arc on along the seam, s, tacks left out
 * @param tackTime with the arc on for tacks, s
 * @param travelSpeed m/s; empty for a plug
 * @param ruledBy what set the travel speed
 * @param arcEnergy U·I/v, J/m: what AWS and ASME call heat input; empty for a plug
 * @param heatInput arc efficiency times that, J/m; empty for a plug
 * @param electricity drawn from the mains, tacks included, J
 */
public record ArcWork(
        double time,
        double tackTime,
        OptionalDouble travelSpeed,
        RuledBy ruledBy,
        OptionalDouble arcEnergy,
        OptionalDouble heatInput,
        double electricity) {

    /** What sets the arc time. */
    public enum RuledBy {
        /** The travel speed was given. */
        GIVEN_SPEED,
        /** The melting balance. */
        MELTING,
        /** The greatest travel speed: there is less to melt than the hand can follow. */
        GREATEST_SPEED
    }

    /**
     * Works out a joint's arc time: the seam at a given speed; else the longer of the time that melting takes and that
     * at the greatest speed. A plug always takes its melting time.
     *
     * @param dilution share of the weld that is base metal, 0 to below 1
     * @param tacks number of tack welds, 0 or more
     */
    public static ArcWork of(Seam seam, ArcSettings arc, double dilution, int tacks) {
        double melting = MeltingBalance.meltingTime(seam.depositVolume(), dilution, arc);
        double fastest = seam.length() / arc.maxTravelSpeed();
        RuledBy ruledBy = RuledBy.MELTING;
        double time = melting;
        if (!seam.plug() && arc.travelSpeed().isPresent()) {
            ruledBy = RuledBy.GIVEN_SPEED;
            time = seam.length() / arc.travelSpeed().getAsDouble();
        } else if (fastest > melting) {
            ruledBy = RuledBy.GREATEST_SPEED;
            time = fastest;
        }
        double tackTime = tacks * arc.tackTime();
        double electricity = arc.power() * (time + tackTime) / arc.powerSourceEfficiency();
        if (seam.plug()) {
            return new ArcWork(
                    time,
                    tackTime,
                    OptionalDouble.empty(),
                    ruledBy,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    electricity);
        }
        double speed = seam.length() / time;
        double energy = arc.power() / speed;
        return new ArcWork(
                time,
                tackTime,
                OptionalDouble.of(speed),
                ruledBy,
                OptionalDouble.of(energy),
                OptionalDouble.of(arc.arcEfficiency() * energy),
                electricity);
    }

    /** With the arc on, tacks included, s. */
    public double arcOn() {
        return time + tackTime;
    }
}
