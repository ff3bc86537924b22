package org.seamtally.preheat;

import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.seam.Member;

/**
 * What preheating takes.
 *
 * @param content heat stored in the zone's steel, J
 * @param losses given off at temperature, W
 * @param energy supplied by the source, J
 * @param fuelMass kg; empty where the source is electricity
 * @param time heat-up (where the source's power is known) and hold, s
 */
public record PreheatUse(double content, double losses, double energy, OptionalDouble fuelMass, double time) {

    /**
     * Works out a joint's preheat: supplied = (content + losses · hold)/η where no power is given; else the source heats
     * up in content/(η P − losses/2), losses growing from none to full meanwhile.
     *
     * @throws TooWeakException where the source never gets there
     */
    public static PreheatUse of(List<Member> members, PreheatPlan plan) {
        double perMass = SteelHeat.content(plan.ambient(), plan.temperature());
        double content = 0;
        double losses = 0;
        for (Member member : members) {
            HeatedZone zone = HeatedZone.of(member, plan.zone());
            content += zone.steelVolume() * SteelHeat.DENSITY * perMass;
            losses += zone.losses(plan.temperature(), plan.ambient());
        }
        double held = losses * plan.hold() / plan.heatingEfficiency();
        double supplied = content / plan.heatingEfficiency() + held;
        double time = plan.hold();
        if (plan.sourcePower().isPresent()) {
            double power = plan.sourcePower().getAsDouble();
            double surplus = plan.heatingEfficiency() * power - losses / 2;
            if (surplus <= 0) {
                throw new TooWeakException(power, losses / 2 / plan.heatingEfficiency());
            }
            double heatUp = content / surplus;
            supplied = power * heatUp + held;
            time += heatUp;
        }
        double energy = supplied;
        OptionalDouble fuel = plan.source().fuel().isPresent()
                ? OptionalDouble.of(energy / plan.source().fuel().get().lowerHeatingValue())
                : OptionalDouble.empty();
        return new PreheatUse(content, losses, energy, fuel, time);
    }

    /** A source whose power the losses eat up before the joint is hot. */
    public static final class TooWeakException extends IllegalArgumentException {

        private static final long serialVersionUID = 1;
        private final double leastPower;

        TooWeakException(double power, double leastPower) {
            super("a source of " + power + " W never gets there: more than " + leastPower + " W is needed");
            this.leastPower = leastPower;
        }

        /** The power that must be exceeded, W. */
        public double leastPower() {
            return leastPower;
        }
    }
}
