package org.seamtally.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.arc.ArcSettings;
import org.seamtally.arc.ArcWork;
import org.seamtally.arc.FillerRod;
import org.seamtally.arc.FillerUse;
import org.seamtally.gas.GasTimes;
import org.seamtally.gas.GasUse;
import org.seamtally.gas.JointArcs;
import org.seamtally.gas.SetUp;
import org.seamtally.gas.StartTransient;
import org.seamtally.preheat.PreheatPlan;
import org.seamtally.preheat.PreheatUse;
import org.seamtally.preheat.SteelHeat;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;

/**
 * The work on one joint: each part is computed when it is first asked for, so that only the defaults that were really
 * used are noted.
 */
public final class JointWork {

    private final GivenJoint given;
    private final Settings settings;
    private final Assumptions.Place place;
    private final Defaults defaults;
    private final Known known;
    private final Joint joint;
    private ArcSettings arcSettings;
    private ArcWork arc;

    JointWork(GivenJoint given, Settings request, Assumptions.Place place, Assumptions assumptions, Known known) {
        this.given = given;
        this.settings = given.own().over(request);
        this.place = place;
        this.defaults = new Defaults(assumptions);
        this.known = known;
        this.joint = given.shape().joint(new ShapeDefaults(assumptions, place));
        if (given.mark() == null && !place.alone()) {
            assumptions.note(place, "mark", Assumptions.words(place.mark()), "numbered in the order sent");
        }
    }

    /** The joint itself, defaults filled in. */
    public Joint joint() {
        return joint;
    }

    /** Its mark. */
    public String mark() {
        return place.mark();
    }

    /** How many of them the frame has; 1 where left out. */
    public int count() {
        return defaults.count(given.count(), place);
    }

    /** Reference of the qualified procedure. */
    public Optional<String> procedure() {
        return given.procedure();
    }

    /** Length, deposit, dihedral angle. */
    public Seam seam() {
        return known.seam(joint);
    }

    /** Filler deposited and consumed. */
    public FillerUse filler() {
        defaults.filler(settings.filler());
        return rod().use(seam().depositVolume());
    }

    /** The stub may be the request's and the rod the joint's own, so that it only shows here. */
    private FillerRod rod() {
        if (defaults.stub(settings.filler()) >= defaults.rodLength(settings.filler())) {
            throw problem(
                    given.own().filler().equals(GivenFiller.NONE),
                    "filler.stubLength",
                    "contradiction",
                    "the stub is shorter than the rod");
        }
        return defaults.rod(settings.filler());
    }

    /** Everything about this joint that cannot be worked with. */
    List<Problem> problems() {
        List<Problem> problems = new ArrayList<>();
        for (Runnable part : List.<Runnable>of(this::filler, this::preheat)) {
            try {
                part.run();
            } catch (UnworkableException e) {
                problems.addAll(e.problems());
            }
        }
        return problems;
    }

    /** The arc's settings, defaults filled in. */
    public ArcSettings arcSettings() {
        if (arcSettings == null) {
            arcSettings = defaults.arc(
                    settings.arc(), joint.thinnerWall(), joint.curve().isEmpty(), place);
        }
        return arcSettings;
    }

    /** Arc time, speed, energy. */
    public ArcWork arc() {
        if (arc == null) {
            arc = ArcWork.of(seam(), arcSettings(), defaults.dilution(settings.steel()), tacks());
        }
        return arc;
    }

    /** Number of tack welds. */
    public int tacks() {
        return defaults.tacks(given.tacks(), joint, place);
    }

    /** Number of arc-on stretches. */
    public int segments() {
        return defaults.segments(given.segments(), joint, place);
    }

    /** How the gas gets to the arc. */
    public SetUp setUp() {
        return defaults.setUp(settings.gas());
    }

    /** The start of the gas in that set-up. */
    public StartTransient start() {
        return known.start(setUp());
    }

    /**
     * Gas used.
     *
     * @param labour time that a leak runs on this joint, s
     */
    public GasUse gas(double labour) {
        return GasUse.of(start(), arcs()).plus(GasUse.leaking(leak(), labour));
    }

    private JointArcs arcs() {
        GasTimes times = new GasTimes(
                defaults.preFlow(settings.gas()),
                defaults.postFlow(settings.gas(), () -> arcSettings().current(), place));
        return new JointArcs(arc().time(), segments(), arcSettings().tackTime(), tacks(), times, given.backPurge());
    }

    /** Flow lost to leaks while anybody is at work, m³/s. */
    double leak() {
        return defaults.leak(settings.gas());
    }

    /** Preheat, where the joint is to be preheated. */
    public Optional<PreheatUse> preheat() {
        return plan().map(plan -> {
            try {
                return PreheatUse.of(joint.members(), plan);
            } catch (PreheatUse.TooWeakException e) {
                throw preheatProblem(
                        "sourcePower",
                        "source-too-weak",
                        "the source never heats this joint: it takes more than " + Math.round(e.leastPower())
                                + " W to make up for what is lost");
            }
        });
    }

    /** How it is preheated, where it is to be. */
    public Optional<PreheatPlan> plan() {
        if (!given.toBePreheated()) {
            defaults.notPreheated(given.preheated(), place);
            return Optional.empty();
        }
        GivenPreheat preheat = settings.preheat();
        if (preheat.temperature() == null) {
            throw preheatProblem("temperature", "missing", "a joint to be preheated needs a temperature");
        }
        double ambient = defaults.ambient(preheat);
        if (preheat.temperature() < ambient || preheat.temperature() > SteelHeat.GREATEST_TEMPERATURE) {
            throw preheatProblem(
                    "temperature", "out-of-range", "a preheat temperature lies above ambient, up to 600 °C");
        }
        return Optional.of(defaults.preheat(preheat));
    }

    private UnworkableException preheatProblem(String field, String key, String message) {
        return problem(given.own().preheat().equals(GivenPreheat.NONE), "preheat." + field, key, message);
    }

    /** @param shared whether the joint has no such settings of its own, so that the request's are to be changed */
    private UnworkableException problem(boolean shared, String field, String key, String message) {
        return new UnworkableException(List.of(new Problem(shared ? field : place.path() + "." + field, key, message)));
    }

    /** What to look at on this joint. */
    public List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>();
        seam().course().ifPresent(course -> courseCautions(course, cautions));
        joint.section().ifPresent(section -> sectionCautions(section, cautions));
        return cautions;
    }

    private void courseCautions(Seam.Course course, List<Caution> cautions) {
        if (course.leastDihedral() < DepositSection.NARROWEST_FILLET - 1e-9) {
            caution(
                    cautions,
                    "narrow-dihedral",
                    "The two surfaces meet at " + degrees(course.leastDihedral())
                            + "° at the heel, below 60°: the root may not be reached there. See the qualified procedure.");
        }
        if (course.grooveShare() > 0) {
            caution(
                    cautions,
                    "wide-dihedral",
                    percent(course.grooveShare())
                            + " of the seam opens beyond 135°, where it is a groove, not a fillet: its throat depends on cope and"
                            + " penetration and is left to the qualified procedure.");
        }
    }

    private void sectionCautions(DepositSection section, List<Caution> cautions) {
        if (section.rootGap() > DepositSection.ROOT_GAP_TO_CAUTION) {
            caution(
                    cautions,
                    "root-gap",
                    "A root gap above 1.6 mm (1/16 in) needs a longer leg by AWS D1.1's fit-up clause"
                            + " (from memory); the throat here does not count the gap. Fit the cope closer.");
        }
        if (section.legMain() > joint.edge().orElse(Double.POSITIVE_INFINITY) * (1 + 1e-9)) {
            caution(
                    cautions,
                    "leg-over-edge",
                    "The leg is longer than the edge it lies on is thick:"
                            + " the edge would be melted away. At most the edge's thickness counts.");
        }
    }

    private void caution(List<Caution> cautions, String cause, String text) {
        cautions.add(new Caution(cause, text, Optional.of(mark())));
    }

    private static String degrees(double angle) {
        return Long.toString(Math.round(Math.toDegrees(angle)));
    }

    private static String percent(double share) {
        return Math.max(1, Math.round(share * 100)) + " %";
    }
}
