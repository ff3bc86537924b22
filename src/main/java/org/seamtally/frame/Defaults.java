package org.seamtally.frame;

import static org.seamtally.frame.Assumptions.measured;
import static org.seamtally.frame.Assumptions.words;

import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import org.seamtally.arc.ArcSettings;
import org.seamtally.arc.FillerRod;
import org.seamtally.catalogue.Filler;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.Fuels;
import org.seamtally.catalogue.Gases;
import org.seamtally.catalogue.ShieldingGas;
import org.seamtally.catalogue.Steels;
import org.seamtally.gas.GasProperties;
import org.seamtally.gas.GasTimes;
import org.seamtally.gas.Hose;
import org.seamtally.gas.MeterPlace;
import org.seamtally.gas.ReferenceState;
import org.seamtally.gas.SetUp;
import org.seamtally.metal.BaseMetal;
import org.seamtally.metal.Restraint;
import org.seamtally.metal.SeamShape;
import org.seamtally.metal.WeldingConditions;
import org.seamtally.preheat.HeatSource;
import org.seamtally.preheat.PreheatPlan;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.PhrasePart;
import org.seamtally.seam.Joint;

/**
 * What is taken for what was left out, each with its reason. Nothing is assumed anywhere else, and there is no default
 * for money.
 */
final class Defaults {

    private static final double INCH = 0.0254;
    private static final double MINUTE = 60;
    private static final double FOOT = 12 * INCH;
    private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;
    private static final double PSI = 4.4482216152605 / (INCH * INCH);
    private static final double ICE = 273.15;

    private static final String COMMON = "common practice, no source";
    private static final String DECISION = "a decision of this project";

    private static final String STOCK = "rods as they are usually sold (handbooks, from memory)";

    /** Fillet leg over the thinner wall: AWS D1.1's tubular clause asks for 1.0 to 1.5 by zone (from memory). */
    static final double LEG_OVER_WALL = 1.25;

    /** A per 0.001 in of the thinner wall, in A/m. */
    private static final double CURRENT_PER_WALL = 1 / (0.001 * INCH);

    private static final double GREATEST_CURRENT = 200;
    private static final double MELTING_EFFICIENCY = 0.20;
    private static final double MAX_TRAVEL_SPEED = 6 * INCH / MINUTE;
    private static final double FLOW = 15 * CUBIC_FOOT / 3600;

    private static final Phrase ROOM = Phrase.of("room temperature, {}", Phrase.either("20 °C", "68 °F"));

    private static final PhrasePart BY_WALL =
            Phrase.either("about 40 A per millimetre (1 A per 0.001 in)", "1 A per 0.001 in");

    private static final Phrase CURRENT_BY_WALL = Phrase.of("{} of the wall, at most 200 A: " + COMMON, BY_WALL);

    private static final Phrase CURRENT_BY_THINNER_WALL =
            Phrase.of("{} of the thinner wall, at most 200 A: " + COMMON, BY_WALL);

    private static final Phrase STUB = Phrase.of(
            "{} of a rod are thrown away (handbooks, from memory)", Phrase.either("50 to 100 mm", "2 to 4 in"));

    private static final Phrase STANDARD_STATE =
            Phrase.of("the trade's standard cubic foot is at {} and 1 atm", Phrase.either("21.1 °C (70 °F)", "70 °F"));

    private static final Phrase USUAL_FLOW =
            Phrase.of("{}: " + COMMON, Phrase.either("5 to 10 L/min", "10 to 20 ft³/h"));

    private static final Phrase POST_FLOW_BY_CURRENT =
            Phrase.of("1 s per 10 A of the joint's current, at least 8 s: " + COMMON);

    private static final Phrase ZONE =
            Phrase.of("{} beyond the joint: AWS D1.1, from memory", Phrase.either("76 mm (3 in)", "3 in"));

    private final Assumptions assumptions;

    Defaults(Assumptions assumptions) {
        this.assumptions = assumptions;
    }

    /** Dilution of a joint. */
    double dilution(GivenSteel given) {
        return dilution(given.dilution(), "steel.dilution");
    }

    double dilution(Double given, String path) {
        return of(
                given,
                path,
                WeldingConditions.USUAL_DILUTION,
                "GTAW with filler dilutes 20 to 40 % (handbooks, from memory)");
    }

    /** The base steel, where a review needs one. */
    BaseMetal base(BaseMetal given, String path) {
        if (given != null) {
            return given;
        }
        assumptions.note(path, words("4130"), "the usual steel of such frames: " + COMMON);
        return BaseMetal.of(Steels.find("4130").orElseThrow());
    }

    double hydrogen(Double given, String path) {
        return of(
                given,
                path,
                Dimension.HYDROGEN,
                WeldingConditions.USUAL_HYDROGEN,
                "a clean bare rod under dry argon, well within class H5 of ISO 3690: " + DECISION);
    }

    Restraint restraint(Restraint given, String path) {
        if (given != null) {
            return given;
        }
        assumptions.note(path, words("medium"), "most joints of a frame have other members to pull on: " + COMMON);
        return WeldingConditions.USUAL_RESTRAINT;
    }

    double startTemperature(Double given) {
        return of(given, "startTemperature", Dimension.TEMPERATURE, WeldingConditions.USUAL_START_TEMPERATURE, ROOM);
    }

    SeamShape shape(SeamShape given) {
        if (given != null) {
            return given;
        }
        assumptions.note("shape", words("fillet"), "the usual seam of a tube frame: " + COMMON);
        return SeamShape.FILLET;
    }

    /** The arc along a seam that is asked about without a joint. */
    ReviewEstimator.SeamArc seamArc(GivenArc given, double wall) {
        double current = of(
                given.current(),
                "arc.current",
                Dimension.CURRENT,
                Math.min(CURRENT_PER_WALL * wall, GREATEST_CURRENT),
                CURRENT_BY_WALL);
        return new ReviewEstimator.SeamArc(
                current,
                voltage(given),
                of(
                        given.travelSpeed(),
                        "arc.travelSpeed",
                        Dimension.SPEED,
                        MAX_TRAVEL_SPEED,
                        "the greatest by hand with a rod (" + COMMON + "): it puts in the least heat, so that hardness"
                                + " and preheat come out on the careful side"),
                arcEfficiency(given));
    }

    private double voltage(GivenArc given) {
        return of(
                given.voltage(), "arc.voltage", Dimension.VOLTAGE, 11, "9 to 15 V across a short argon arc: " + COMMON);
    }

    private double arcEfficiency(GivenArc given) {
        return of(
                given.arcEfficiency(), "arc.arcEfficiency", 0.67, "DuPont and Marder, Welding Journal 74, 1995, 406-s");
    }

    Filler filler(GivenFiller given) {
        if (given.filler() != null) {
            return given.filler();
        }
        assumptions.note(
                "filler.classification", words("ER70S-2"), "the low-carbon rod for carbon and Cr-Mo steels: " + COMMON);
        return Fillers.find("ER70S-2").orElseThrow();
    }

    FillerRod rod(GivenFiller given) {
        return new FillerRod(
                of(given.diameter(), "filler.diameter", Dimension.LENGTH, INCH / 16, STOCK),
                rodLength(given),
                stub(given),
                of(
                        given.depositionEfficiency(),
                        "filler.depositionEfficiency",
                        0.98,
                        "0.95 to 1.00 in GTAW (handbooks, from memory)"));
    }

    double rodLength(GivenFiller given) {
        return of(given.rodLength(), "filler.rodLength", Dimension.LENGTH, 36 * INCH, STOCK);
    }

    double stub(GivenFiller given) {
        return of(given.stubLength(), "filler.stubLength", Dimension.LENGTH, 2 * INCH, STUB);
    }

    /** @param plug whether it is a plug, which takes its melting time whatever travel speed is given */
    ArcSettings arc(GivenArc given, double thinnerWall, boolean plug, Assumptions.Place joint) {
        double current = of(
                given.current(),
                joint,
                "arc.current",
                Dimension.CURRENT,
                Math.min(CURRENT_PER_WALL * thinnerWall, GREATEST_CURRENT),
                CURRENT_BY_THINNER_WALL);
        // with a travel speed given nothing is left for these two to decide: they are not noted
        boolean balanced = plug || given.travelSpeed() == null;
        double melting = given.meltingEfficiency() == null && !balanced
                ? MELTING_EFFICIENCY
                : of(
                        given.meltingEfficiency(),
                        "arc.meltingEfficiency",
                        MELTING_EFFICIENCY,
                        DECISION + "; the literature has 0.15 to 0.35: fit it to your own timed welds");
        double fastest = given.maxTravelSpeed() == null && !balanced
                ? MAX_TRAVEL_SPEED
                : of(
                        given.maxTravelSpeed(),
                        "arc.maxTravelSpeed",
                        Dimension.SPEED,
                        MAX_TRAVEL_SPEED,
                        "by hand with a rod: " + COMMON);
        return new ArcSettings(
                current,
                voltage(given),
                arcEfficiency(given),
                melting,
                maybe(given.travelSpeed()),
                fastest,
                of(given.tackTime(), "arc.tackTime", Dimension.TIME, 2, DECISION),
                of(given.powerSourceEfficiency(), "arc.powerSourceEfficiency", 0.80, DECISION));
    }

    SetUp setUp(GivenGas given) {
        OptionalDouble orifice = maybe(given.orificeDiameter());
        double reference = of(
                given.referenceTemperature(),
                "gas.referenceTemperature",
                Dimension.TEMPERATURE,
                (70 + 459.67) / 1.8,
                STANDARD_STATE);
        return new SetUp(
                GasProperties.of(mixture(given)),
                of(given.flow(), "gas.flow", Dimension.FLOW, FLOW, USUAL_FLOW),
                reference,
                of(
                        given.gasTemperature(),
                        "gas.temperature",
                        Dimension.TEMPERATURE,
                        reference,
                        "the gas in the hose is as warm as the reference state: " + DECISION),
                of(
                                given.supplyGaugePressure(),
                                "gas.supplyGaugePressure",
                                Dimension.GAUGE_PRESSURE,
                                50 * PSI,
                                "a usual regulator setting: " + COMMON)
                        + ReferenceState.PRESSURE,
                of(
                        given.torchBackPressure(),
                        "gas.torchBackPressure",
                        Dimension.GAUGE_PRESSURE,
                        3 * PSI,
                        "what a torch line takes at the set flow: " + DECISION),
                new Hose(
                        of(
                                given.hoseBore(),
                                "gas.hose.insideDiameter",
                                Dimension.LENGTH,
                                INCH / 4,
                                "a usual hose: " + COMMON),
                        of(
                                given.hoseLength(),
                                "gas.hose.length",
                                Dimension.LENGTH,
                                25 * FOOT,
                                "a usual hose: " + COMMON)),
                orifice,
                meterAt(given),
                of(
                        given.nozzleDiameter(),
                        "gas.nozzleDiameter",
                        Dimension.LENGTH,
                        INCH / 2,
                        "a usual gas nozzle: " + COMMON),
                SetUp.USUAL_ALLOWED_DRIFT);
    }

    ShieldingGas mixture(GivenGas given) {
        if (given.mixture() != null) {
            return given.mixture();
        }
        assumptions.note("gas.mixture", words("argon"), "the usual gas for GTAW: " + COMMON);
        return Gases.find("argon").orElseThrow();
    }

    private MeterPlace meterAt(GivenGas given) {
        if (given.meterAt() != null) {
            return given.meterAt();
        }
        assumptions.note("gas.meterAt", words("supply"), "the meter sits on the regulator: " + COMMON);
        return MeterPlace.SUPPLY;
    }

    double preFlow(GivenGas given) {
        return of(given.preFlow(), "gas.preFlow", Dimension.TIME, GasTimes.USUAL_PRE_FLOW, "0.2 to 1 s: " + COMMON);
    }

    double postFlow(GivenGas given, DoubleSupplier current, Assumptions.Place joint) {
        if (given.postFlow() != null) {
            return given.postFlow();
        }
        return of(
                null,
                joint,
                "gas.postFlow",
                Dimension.TIME,
                GasTimes.usualPostFlow(current.getAsDouble()),
                POST_FLOW_BY_CURRENT);
    }

    /** Post-flow apart from any joint: without a current, the least that is usual. */
    double postFlow(GivenGas given, GivenArc arc) {
        double current = arc.current() == null ? Double.MIN_NORMAL : arc.current();
        return of(
                given.postFlow(),
                "gas.postFlow",
                Dimension.TIME,
                GasTimes.usualPostFlow(current),
                "1 s per 10 A of the current, at least 8 s: " + COMMON);
    }

    double leak(GivenGas given) {
        return of(given.leak(), "gas.leak", Dimension.FLOW, 0, "none known of; measure it with the arc off");
    }

    /** A plan for a joint whose preheat temperature is known. */
    PreheatPlan preheat(GivenPreheat given) {
        if (given.sourcePower() == null) {
            assumptions.note(
                    "preheat.sourcePower",
                    words("not given"),
                    "so heat-up time, and what is lost meanwhile, are left out");
        }
        return new PreheatPlan(
                given.temperature(),
                ambient(given),
                of(given.zone(), "preheat.zone", Dimension.LENGTH, 3 * INCH, ZONE),
                of(given.hold(), "preheat.hold", Dimension.TIME, 0, DECISION + ": welded as soon as it is hot"),
                source(given),
                of(
                        given.heatingEfficiency(),
                        "preheat.heatingEfficiency",
                        0.25,
                        "a flame held by hand puts 0.1 to 0.4 into the steel (handbooks, from memory)"),
                maybe(given.sourcePower()));
    }

    /** The temperature that is advised, where none was given. */
    GivenPreheat advised(GivenPreheat given, double temperature) {
        assumptions.note(
                "preheat.temperature",
                measured(Dimension.TEMPERATURE, temperature),
                "what is recommended for this joint");
        return given.to(temperature);
    }

    double ambient(GivenPreheat given) {
        return of(given.ambient(), "preheat.ambient", Dimension.TEMPERATURE, 20 + ICE, ROOM);
    }

    private HeatSource source(GivenPreheat given) {
        if (given.source() != null) {
            return given.source();
        }
        assumptions.note("preheat.source", words("propane"), "a torch from the shelf: " + COMMON);
        return HeatSource.of(Fuels.find("propane").orElseThrow());
    }

    double operatingFactor(GivenLabour given) {
        return of(
                given.operatingFactor(),
                "labour.operatingFactor",
                0.35,
                DECISION + ", at the joint; published all-in figures for manual GTAW, 0.15 to 0.25, hold fit-up and"
                        + " set-up too (from memory)");
    }

    double fitUpPerJoint(GivenLabour given) {
        return of(given.fitUpPerJoint(), "labour.fitUpPerJoint", Dimension.TIME, 6 * MINUTE, DECISION);
    }

    double setUpPerOrder(GivenLabour given) {
        return of(given.setUpPerOrder(), "labour.setUpPerOrder", Dimension.TIME, 60 * MINUTE, DECISION);
    }

    int quantity(Integer given) {
        if (given != null) {
            return given;
        }
        assumptions.note("frame.quantity", words("1"), "one frame unless more are asked for");
        return 1;
    }

    int count(Integer given, Assumptions.Place place) {
        if (given != null) {
            return given;
        }
        assumptions.note(place, "count", words("1"), "one of them unless more are asked for");
        return 1;
    }

    /** Notes that a joint which does not speak of preheat gets none. */
    void notPreheated(Boolean given, Assumptions.Place place) {
        if (given == null) {
            assumptions.note(place, "preheated", words("false"), "no preheat unless it is asked for: " + COMMON);
        }
    }

    double access(Double given, Assumptions.Place place) {
        if (given != null) {
            return given;
        }
        assumptions.note(place, "access", words("1"), "as easy to reach as any: " + DECISION);
        return 1;
    }

    int tacks(Integer given, Joint joint, Assumptions.Place place) {
        return count(given, "tacks", joint.usualPractice().tacks(), place);
    }

    int segments(Integer given, Joint joint, Assumptions.Place place) {
        return count(given, "segments", joint.usualPractice().segments(), place);
    }

    private int count(Integer given, String field, int usual, Assumptions.Place place) {
        if (given != null) {
            return given;
        }
        assumptions.note(place, field, words(Integer.toString(usual)), "usual for this kind of joint: " + COMMON);
        return usual;
    }

    private double of(Double given, String path, double fallback, String because) {
        if (given != null) {
            return given;
        }
        assumptions.note(path, assumptions.number(fallback), because);
        return fallback;
    }

    private double of(Double given, String path, Dimension dimension, double fallback, String because) {
        return of(given, path, dimension, fallback, assumptions.reason(because));
    }

    private double of(Double given, String path, Dimension dimension, double fallback, Phrase because) {
        if (given != null) {
            return given;
        }
        assumptions.note(path, measured(dimension, fallback), because);
        return fallback;
    }

    private double of(
            Double given, Assumptions.Place joint, String field, Dimension dimension, double fallback, Phrase because) {
        if (given != null) {
            return given;
        }
        assumptions.note(joint, field, measured(dimension, fallback), because);
        return fallback;
    }

    private static OptionalDouble maybe(Double given) {
        return given == null ? OptionalDouble.empty() : OptionalDouble.of(given);
    }
}
