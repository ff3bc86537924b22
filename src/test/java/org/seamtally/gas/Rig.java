package org.seamtally.gas;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.seamtally.catalogue.GasSpecies;
import org.seamtally.catalogue.ShieldingGas;
import org.seamtally.catalogue.Status;

/** Set-ups to test with, and the units of the trade. The default: ¼ in × 25 ft, 50 psi, 15 ft³/h, 3 psi at the torch. */
final class Rig {

    static final double INCH = 0.0254;
    static final double FOOT = 0.3048;
    static final double PSI = 6894.757293168;
    static final double CUBIC_FOOT = 0.028316846592;
    static final double CUBIC_FOOT_PER_HOUR = CUBIC_FOOT / 3600;
    static final double LITRE = 1e-3;
    static final double ATMOSPHERE = 101_325;
    static final double F70 = 273.15 + (70 - 32) / 1.8;

    /** Molar mass by IUPAC; the viscosity at 20 °C is that of Lemmon and Jacobsen 2004, rounded. */
    static final GasSpecies ARGON_SPECIES =
            new GasSpecies("argon", 0.039948, 5.0 / 3, 22.3e-6, "Lemmon and Jacobsen 2004", Status.READ);

    static final GasProperties ARGON = GasProperties.of(
            new ShieldingGas("argon", List.of(new ShieldingGas.Part(ARGON_SPECIES, 1)), "pure", Status.READ));

    GasProperties gas = ARGON;
    double flow = 15 * CUBIC_FOOT_PER_HOUR;
    double referenceTemperature = F70;
    double gasTemperature = F70;
    double supplyPressure = ATMOSPHERE + 50 * PSI;
    double torchBackPressure = 3 * PSI;
    double bore = 0.25 * INCH;
    double length = 25 * FOOT;
    OptionalDouble orifice = OptionalDouble.empty();
    MeterPlace meterAt = MeterPlace.SUPPLY;
    double nozzle = 0.5 * INCH;
    double allowedDrift = 0.05;

    static SetUp usual() {
        return with(rig -> {});
    }

    static SetUp with(Consumer<Rig> change) {
        Rig rig = new Rig();
        change.accept(rig);
        return rig.setUp();
    }

    static SetUp smallBore() {
        return with(rig -> rig.bore = 0.112 * INCH);
    }

    static SetUp withOrifice() {
        return with(rig -> rig.orifice = OptionalDouble.of(0.025 * INCH));
    }

    /** About the usual flow, with the nozzle at which a Reynolds number is just what is asked for, to the last bit. */
    static SetUp withNozzleWhere(double wanted, ToDoubleFunction<SetUp> reynolds) {
        for (double more = 1; more < 1.05; more += 0.001) {
            double flow = more * usual().flow();
            SetUp first = with(rig -> rig.flow = flow);
            // Re·D is the same for all nozzles
            double diameter = first.nozzleDiameter() * reynolds.applyAsDouble(first) / wanted;
            for (int i = -2; i <= 2; i++) {
                double tried = diameter + i * Math.ulp(diameter);
                SetUp setUp = with(rig -> {
                    rig.flow = flow;
                    rig.nozzle = tried;
                });
                if (reynolds.applyAsDouble(setUp) == wanted) {
                    return setUp;
                }
            }
        }
        throw new AssertionError("no nozzle gives just " + wanted);
    }

    SetUp setUp() {
        return new SetUp(
                gas,
                flow,
                referenceTemperature,
                gasTemperature,
                supplyPressure,
                torchBackPressure,
                new Hose(bore, length),
                orifice,
                meterAt,
                nozzle,
                allowedDrift);
    }

    /**
     * Set-ups whose flow can be reached: bores of 1.5 to 13 mm, 1 to 60 m, 0.7 to 10 bar, 2 to 40 L/min, orifices of 0.3
     * to 3 mm or none. The seed is part of each one's name, so that a failure prints it.
     */
    static Stream<Drawn> sweep(long seed, int count) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        return Stream.generate(() -> draw(random))
                .filter(setUp -> SteadyState.of(setUp).reachable())
                .limit(count)
                .map(setUp -> new Drawn(seed, setUp))
                .toList()
                .stream();
    }

    private static SetUp draw(RandomGenerator random) {
        return with(rig -> {
            rig.flow = between(random, 2, 40) * LITRE / 60;
            rig.supplyPressure = ATMOSPHERE + between(random, 0.7, 10) * 1e5;
            rig.torchBackPressure = between(random, 3e3, 60e3);
            rig.bore = between(random, 1.5e-3, 13e-3);
            rig.length = between(random, 1, 60);
            rig.orifice =
                    random.nextInt(3) == 0 ? OptionalDouble.empty() : OptionalDouble.of(between(random, 0.3e-3, 3e-3));
        });
    }

    /** Even in the logarithm. */
    static double between(RandomGenerator random, double from, double to) {
        return from * Math.pow(to / from, random.nextDouble());
    }

    /** Every n-th pick of a range, for sweeps over one number. */
    static IntStream steps(int count) {
        return IntStream.range(0, count);
    }

    record Drawn(long seed, SetUp setUp) {}

    private Rig() {}
}
