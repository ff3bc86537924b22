package org.seamtally.metal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import org.seamtally.metal.FilletSeam.Stretch;
import org.seamtally.metal.FilletZone.Throat;
import org.seamtally.quantity.Decimals;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * A fillet's legs, zone by zone, against the named rule of AWS D1.1's tubular clause. No load is considered: a seam meets
 * the rule or does not meet it, and neither is an acceptance.
 *
 * @param zones each zone that the seam has, in the order of the clause
 * @param leastThroat least effective throat over the angles up to 135°, m; empty where all of the seam is more open
 * @param below60 share of the seam where the angle is below 60°
 * @param above135 share of the seam where the angle is above 135°
 * @param scope what keeps the seam, or may keep it, out of the code's scope
 * @param cautions on root, legs and face
 */
public record FilletAdequacy(
        List<Zone> zones,
        OptionalDouble leastThroat,
        double below60,
        double above135,
        List<Phrase> scope,
        List<Caution> cautions) {

    /** AWS D1.1 takes fillets in skewed joints from 60° (D. K. Miller, Designing Fillet Welds for Skewed T-joints). */
    private static final double LEAST_ANGLE = 60;

    /** Up to 135°, by the same source. */
    private static final double GREATEST_ANGLE = 135;

    /** Below it nothing counts: AWS D1.1, skewed T-joints, from memory. */
    private static final double NOTHING_COUNTS = 30;

    /** Legs and walls are given in inches or millimetres: equal ones differ in the last bits. */
    private static final double EQUAL = 1 - 1e-9;

    /** Rise over face width up to which a convex face is called slightly convex: common practice, no source. */
    private static final double SLIGHTLY_CONVEX = 0.10;

    /** The least wall of AWS D1.1's tubular scope, 1/8 in, m. */
    private static final double LEAST_WALL = Customary.METRES_AN_INCH / 8;

    /**
     * One zone of the seam.
     *
     * @param zone by angle
     * @param share of the seam's length
     * @param legOfWall the leg that counts over the thinner wall
     * @param leastThroat least effective throat in it up to 135°, m; empty where all of it is more open
     * @param demands the leg asked for and whether it is met, by throat; empty where the clause takes no fillet
     */
    public record Zone(
            FilletZone zone, double share, double legOfWall, OptionalDouble leastThroat, Map<Throat, Demand> demands) {

        /** Copies the map. */
        public Zone {
            demands = Map.copyOf(demands);
        }
    }

    /**
     * What the clause asks for in a zone.
     *
     * @param legOfWall leg over the thinner wall
     * @param leg the leg that has to count, m
     * @param leastLeg the least leg to be welded, the root gap added, m; empty where no leg that fits the edge is enough, or
     *     none at all is
     * @param met whether the leg that counts is as long
     */
    public record Demand(double legOfWall, double leg, OptionalDouble leastLeg, boolean met) {}

    /** Copies the lists. */
    public FilletAdequacy {
        zones = List.copyOf(zones);
        scope = List.copyOf(scope);
        cautions = List.copyOf(cautions);
    }

    /** Checks a seam. */
    public static FilletAdequacy of(FilletSeam seam) {
        double leg = seam.legThatCounts();
        List<Zone> zones = new ArrayList<>();
        for (FilletZone zone : FilletZone.values()) {
            List<Stretch> there = seam.stretches().stream()
                    .filter(stretch -> FilletZone.of(stretch.dihedral()) == zone)
                    .toList();
            if (!there.isEmpty()) {
                zones.add(zone(zone, seam, leg, there));
            }
        }
        OptionalDouble leastThroat = leastThroat(seam.stretches());
        double below60 = share(seam, angle -> angle < LEAST_ANGLE);
        double above135 = share(seam, angle -> angle > GREATEST_ANGLE);
        return new FilletAdequacy(
                zones, leastThroat, below60, above135, scope(seam), cautions(seam, zones, below60, above135));
    }

    /** Share of the seam where the angle lies outside the 60° to 135° of the code's fillets. */
    public double outside60To135() {
        return below60 + above135;
    }

    /**
     * Whether every zone that takes a fillet meets the rule for that throat. A zone over 120° takes none: it is left out
     * here and cautioned.
     */
    public boolean meets(Throat throat) {
        return zones.stream()
                .filter(zone -> zone.zone().takesFillet())
                .allMatch(zone -> zone.demands().get(throat).met());
    }

    /**
     * The least leg that meets the rule for that throat in every zone that takes a fillet, m; empty where no zone takes
     * one, or where in some zone no leg that fits the edge meets the rule.
     */
    public OptionalDouble leastLeg(Throat throat) {
        List<OptionalDouble> legs = zones.stream()
                .filter(zone -> zone.zone().takesFillet())
                .map(zone -> zone.demands().get(throat).leastLeg())
                .toList();
        return legs.stream().allMatch(OptionalDouble::isPresent)
                ? legs.stream().mapToDouble(OptionalDouble::getAsDouble).max()
                : OptionalDouble.empty();
    }

    private static Zone zone(FilletZone zone, FilletSeam seam, double leg, List<Stretch> there) {
        Map<Throat, Demand> demands = new EnumMap<>(Throat.class);
        if (zone.takesFillet()) {
            boolean counts =
                    there.stream().allMatch(stretch -> FilletZone.degrees(stretch.dihedral()) >= NOTHING_COUNTS);
            for (Throat throat : Throat.values()) {
                double asked = zone.leg(throat) * seam.wall();
                OptionalDouble least = counts && fits(seam, asked)
                        ? OptionalDouble.of(asked + seam.rootGap())
                        : OptionalDouble.empty();
                demands.put(throat, new Demand(zone.leg(throat), asked, least, counts && leg >= asked * EQUAL));
            }
        }
        double share = there.stream().mapToDouble(Stretch::share).sum();
        return new Zone(zone, share, leg / seam.wall(), leastThroat(there), demands);
    }

    /** Whether the edge leaves room for a leg of which so much counts. */
    private static boolean fits(FilletSeam seam, double asked) {
        return (asked + seam.rootGap()) * EQUAL <= seam.longestLeg();
    }

    private static OptionalDouble leastThroat(List<Stretch> stretches) {
        return stretches.stream()
                .filter(stretch -> FilletZone.degrees(stretch.dihedral()) <= GREATEST_ANGLE)
                .mapToDouble(EffectiveThroat::of)
                .min();
    }

    /** Share of the seam whose angle, in degrees, is such. */
    private static double share(FilletSeam seam, DoublePredicate such) {
        return seam.stretches().stream()
                .filter(stretch -> such.test(FilletZone.degrees(stretch.dihedral())))
                .mapToDouble(Stretch::share)
                .sum();
    }

    private static List<Phrase> scope(FilletSeam seam) {
        List<Phrase> scope = new ArrayList<>();
        scope.add(Phrase.of(
                "AWS D1.1 names the steels it covers; chromium-molybdenum tube such as 4130 is not among them"));
        if (seam.wall() < LEAST_WALL * EQUAL) {
            scope.add(Phrase.of(
                    "AWS D1.1 leaves out walls under {}: outside the code's scope, shown for comparison",
                    Phrase.either("3.2 mm", "1/8 in")));
        }
        return scope;
    }

    private static List<Caution> cautions(FilletSeam seam, List<Zone> zones, double below60, double above135) {
        List<Caution> cautions = new ArrayList<>();
        if (below60 > 0) {
            cautions.add(new Caution(
                    "root-not-reached",
                    percent(below60) + " of the seam has an angle below 60°: the root may not be reached there; a loss"
                            + " is taken off the throat, and below 30° nothing counts."));
        }
        double bevelled = zones.stream()
                .filter(zone -> !zone.zone().takesFillet())
                .mapToDouble(Zone::share)
                .sum();
        if (bevelled > 0) {
            cautions.add(new Caution(
                    "bevel-asked",
                    percent(bevelled)
                            + " of the seam has an angle above 120°, where the tubular clause of AWS D1.1 asks"
                            + " for a bevelled edge"
                            + (above135 > 0
                                    ? "; above 135° (" + percent(above135)
                                            + ") it is a groove, whose throat depends on cope and penetration"
                                    : "")
                            + ": see the qualified procedure."));
        }
        if (!allMeet(zones)) {
            cautions.add(new Caution(
                    "fillet-small",
                    Phrase.of(
                            "The leg does not meet the rule of AWS D1.1's tubular clause for a throat of 0.7 of the thinner"
                                    + " wall: {} is asked for"
                                    + (seam.rootGap() > 0 ? ", and the root gap on top" : "")
                                    + ". The code covers neither every steel nor thin walls: for comparison only."
                                    + " No load was considered.",
                            Phrase.measured(Dimension.LENGTH, legAskedFor(zones)))));
        }
        zones.stream()
                .filter(zone -> zone.zone() == FilletZone.HEEL)
                .filter(zone ->
                        zone.leastThroat().orElse(0) < Throat.SEVEN_TENTHS_OF_WALL.ofWall() * seam.wall() * EQUAL)
                .findFirst()
                .ifPresent(heel -> cautions.add(new Caution(
                        "heel-throat",
                        Phrase.of(
                                "Below 60° (" + percent(heel.share())
                                        + " of the seam) a throat of {} is left once the root's"
                                        + " loss is taken off, under 0.7 of the thinner wall, whatever the leg's rule says: the"
                                        + " throat there is left to the qualified procedure.",
                                Phrase.measured(
                                        Dimension.LENGTH, heel.leastThroat().orElse(0))))));
        // where nothing counts at all, no edge is to blame: the root is cautioned
        if (zones.stream()
                .filter(zone -> zone.zone().takesFillet())
                .map(zone -> zone.demands().get(Throat.SEVEN_TENTHS_OF_WALL))
                .anyMatch(demand -> !fits(seam, demand.leg()))) {
            cautions.add(new Caution(
                    "no-leg-fits-edge",
                    "No leg that fits the edge it lies on meets the rule of AWS D1.1's tubular clause for a throat of 0.7"
                            + " of the thinner wall"
                            + (seam.rootGap() > 0 ? ", the root gap taken off" : "")
                            + ": no least leg is given. See the qualified procedure."));
        }
        faceCaution(seam, zones, cautions);
        return cautions;
    }

    private static double legAskedFor(List<Zone> zones) {
        return zones.stream()
                .filter(zone -> zone.zone().takesFillet())
                .mapToDouble(
                        zone -> zone.demands().get(Throat.SEVEN_TENTHS_OF_WALL).leg())
                .max()
                .orElse(0);
    }

    private static boolean allMeet(List<Zone> zones) {
        return zones.stream()
                .filter(zone -> zone.zone().takesFillet())
                .allMatch(
                        zone -> zone.demands().get(Throat.SEVEN_TENTHS_OF_WALL).met());
    }

    private static void faceCaution(FilletSeam seam, List<Zone> zones, List<Caution> cautions) {
        if (seam.face() == FaceForm.CONCAVE) {
            cautions.add(new Caution(
                    "face-concave",
                    "A concave face shrinks into tension and may crack along its centreline"
                            + (allMeet(zones) ? "" : ", the more so as the leg is small")
                            + "; flat to slightly convex is preferred."));
        }
        if (seam.face() == FaceForm.CONVEX && seam.rise() > SLIGHTLY_CONVEX) {
            List<ConvexityLimit> exceeded = ConvexityLimit.exceededBy(seam);
            String limits = exceeded.isEmpty()
                    ? "it stays within EN 25817 levels B to D and AWS D1.1"
                    : "it exceeds "
                            + String.join(
                                    ", ",
                                    exceeded.stream().map(ConvexityLimit::title).toList());
            cautions.add(new Caution(
                    "face-over-convex",
                    "The face stands out by " + percent(seam.rise()) + " of its width, a notch at the toes; " + limits
                            + ". Flat to slightly convex (up to 10 %) is preferred."));
        }
    }

    private static String percent(double share) {
        return Decimals.of(share * 100, 0) + " %";
    }
}
