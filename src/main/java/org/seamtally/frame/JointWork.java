package org.seamtally.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.arc.ArcSettings;
import org.seamtally.arc.ArcWork;
import org.seamtally.arc.FillerRod;
import org.seamtally.arc.FillerUse;
import org.seamtally.gas.GasTimes;
import org.seamtally.gas.GasUse;
import org.seamtally.gas.JointArcs;
import org.seamtally.gas.SetUp;
import org.seamtally.gas.StartTransient;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.metal.PreheatAdvice;
import org.seamtally.metal.ReviewedFiller;
import org.seamtally.metal.Rod;
import org.seamtally.metal.SeamShape;
import org.seamtally.metal.SteelReview;
import org.seamtally.metal.WeldingConditions;
import org.seamtally.preheat.PreheatPlan;
import org.seamtally.preheat.PreheatUse;
import org.seamtally.preheat.SteelHeat;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;
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
    private final boolean adviceStands;
    private ArcSettings arcSettings;
    private ArcWork arc;
    private StartTransient start;

    JointWork(GivenJoint given, Settings request, Assumptions.Place place, Assumptions assumptions, Known known) {
        this(given, request, place, assumptions, known, false);
    }

    /** @param adviceStands whether the temperature that is advised is taken where none was given */
    JointWork(
            GivenJoint given,
            Settings request,
            Assumptions.Place place,
            Assumptions assumptions,
            Known known,
            boolean adviceStands) {
        this.given = given;
        this.settings = given.own().over(request);
        this.place = place;
        this.defaults = new Defaults(assumptions);
        this.known = known;
        this.adviceStands = adviceStands;
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

    /** Factor on its handling time. */
    double access() {
        return defaults.access(given.access(), place);
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
        if (start == null) {
            start = known.start(setUp(), mark());
        }
        return start;
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
        return new JointArcs(
                arc().time(), segments(), arcSettings().tackTime(), tacks(), gasTimes(), given.backPurge());
    }

    private GasTimes gasTimes() {
        return new GasTimes(
                defaults.preFlow(settings.gas()),
                defaults.postFlow(settings.gas(), () -> arcSettings().current(), place));
    }

    /** What is set and picked up at the joint besides the arc. */
    public WelderSettings welderSettings() {
        SetUp setUp = start().setUp();
        return new WelderSettings(
                defaults.base(settings.steel().base(), "steel.base").name(),
                defaults.filler(settings.filler()).classification(),
                rod().diameter(),
                defaults.mixture(settings.gas()).name(),
                setUp.flow(),
                setUp.nozzleDiameter(),
                gasTimes(),
                given.backPurge(),
                plan());
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
            preheat = defaults.advised(preheat, adviceForLackOfTemperature());
        }
        double ambient = defaults.ambient(preheat);
        if (preheat.temperature() < ambient || preheat.temperature() > SteelHeat.GREATEST_TEMPERATURE) {
            throw preheatProblem(
                    "temperature", "out-of-range", "a preheat temperature lies above ambient, up to 600 °C");
        }
        return Optional.of(defaults.preheat(preheat));
    }

    private double adviceForLackOfTemperature() {
        if (!adviceStands) {
            throw preheatProblem("temperature", "missing", "a joint to be preheated needs a temperature");
        }
        return preheatAdvice()
                .map(PreheatAdvice::advised)
                .orElse(OptionalDouble.empty())
                .orElseThrow(() -> preheatProblem(
                        "temperature",
                        "missing",
                        "no preheat is advised for this joint: to work one out, a temperature is needed"));
    }

    private UnworkableException preheatProblem(String field, String key, String message) {
        return problem(given.own().preheat().equals(GivenPreheat.NONE), "preheat." + field, key, message);
    }

    /** @param shared whether the joint has no such settings of its own, so that the request's are to be changed */
    private UnworkableException problem(boolean shared, String field, String key, String message) {
        return new UnworkableException(List.of(new Problem(shared ? field : place.path() + "." + field, key, message)));
    }

    /** Whether preheat is due, welded from ambient temperature; empty where the formulas do not take the alloy. */
    public Optional<PreheatAdvice> preheatAdvice() {
        try {
            return Optional.of(review(defaults.ambient(settings.preheat()))
                    .fillers()
                    .get(0)
                    .preheat());
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private SteelReview review(double startTemperature) {
        GivenSteel steel = settings.steel();
        // a plug has no travel speed: at the greatest one it cools fastest, and the caution says so
        double arcEnergy =
                arc().arcEnergy().orElse(arcSettings().power() / arcSettings().maxTravelSpeed());
        return known.review(
                defaults.base(steel.base(), "steel.base"),
                Rod.of(defaults.filler(settings.filler())),
                new WeldingConditions(
                        joint.thickerWall(),
                        defaults.dilution(steel),
                        arcEnergy,
                        defaults.hydrogen(steel.hydrogen(), "steel.hydrogen"),
                        startTemperature,
                        defaults.restraint(steel.restraint(), "steel.restraint"),
                        SeamShape.FILLET));
    }

    /**
     * What becomes of its metal and whether its fillet meets the code's rule. It never fails: what cannot be worked out is
     * a caution.
     *
     * @param prices to say what an advised preheat would cost
     * @param before cautions that stand on the joint already, and are not said twice
     */
    public JointMetal metal(Optional<Prices> prices, List<Caution> before) {
        List<Caution> cautions = new ArrayList<>();
        Optional<AdvisedPreheat> advised = Optional.empty();
        OptionalDouble preheatedTo =
                plan().map(plan -> OptionalDouble.of(plan.temperature())).orElse(OptionalDouble.empty());
        try {
            SteelReview review =
                    review(preheatedTo.isPresent() ? preheatedTo.getAsDouble() : defaults.ambient(settings.preheat()));
            ReviewedFiller filler = review.fillers().get(0);
            review.base().cautions().forEach(caution -> caution(cautions, caution.cause(), caution.text()));
            filler.cautions().stream()
                    .filter(caution -> !caution.cause().equals("preheat-advised"))
                    .forEach(caution -> caution(cautions, caution.cause(), caution.text()));
            OptionalDouble temperature = filler.preheat().advised();
            if (temperature.isPresent()) {
                advised = advised(temperature.getAsDouble(), preheatedTo, prices, cautions);
            }
            if (joint.curve().isEmpty()) {
                caution(
                        cautions,
                        "plug-cooling",
                        "A plug has no travel speed: its metal was taken to cool as a seam at the greatest travel speed.");
            }
        } catch (IllegalArgumentException e) {
            caution(
                    cautions,
                    "steel-not-reviewed",
                    "The steel review could not be worked out: " + e.getMessage() + ".");
        }
        Optional<FilletAdequacy> fillet = known.fillet(joint);
        fillet.ifPresent(adequacy -> adequacy.cautions().stream()
                .filter(caution -> before.stream().noneMatch(other -> saysTheSame(other.cause(), caution.cause())))
                .forEach(caution -> caution(cautions, caution.cause(), caution.text())));
        return new JointMetal(fillet, advised, cautions);
    }

    private static boolean saysTheSame(String before, String now) {
        return before.equals(now) || before.equals("narrow-dihedral") && now.equals("root-not-reached");
    }

    private Optional<AdvisedPreheat> advised(
            double temperature, OptionalDouble preheatedTo, Optional<Prices> prices, List<Caution> cautions) {
        String stands = "; the qualified procedure stands over it.";
        if (preheatedTo.isPresent()) {
            // the trade's 300 °F is 150 °C: less than two kelvins are below what a shop measures on a tube
            if (preheatedTo.getAsDouble() < temperature - 2) {
                caution(
                        cautions,
                        "preheat-below-advice",
                        Phrase.of(
                                "Preheat to {} is advised and {} is asked for" + stands,
                                Phrase.measured(Dimension.TEMPERATURE, temperature),
                                Phrase.measured(Dimension.TEMPERATURE, preheatedTo.getAsDouble())));
            }
            return Optional.empty();
        }
        caution(
                cautions,
                "preheat-advised",
                Phrase.of(
                        "Preheat to {} is advised and none is asked for" + stands,
                        Phrase.measured(Dimension.TEMPERATURE, temperature)));
        GivenPreheat given = settings.preheat();
        if (temperature < defaults.ambient(given) || temperature > SteelHeat.GREATEST_TEMPERATURE) {
            return Optional.empty();
        }
        PreheatPlan plan = defaults.preheat(given.to(temperature));
        try {
            PreheatUse use = PreheatUse.of(joint.members(), plan);
            return Optional.of(new AdvisedPreheat(
                    temperature,
                    use,
                    plan.source(),
                    prices.flatMap(known -> Cost.ofPreheat(Totals.ofPreheat(use, plan.source()), known))));
        } catch (PreheatUse.TooWeakException e) {
            caution(cautions, "source-too-weak", "The source given never heats this joint to the advised temperature.");
            return Optional.empty();
        }
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
                    Phrase.of(
                            "A root gap above {} needs a longer leg by AWS D1.1's fit-up clause (from memory); the throat"
                                    + " here does not count the gap. Fit the cope closer.",
                            Phrase.either("1.6 mm", "1/16 in")));
        }
        if (section.passes(joint.edge())) {
            caution(
                    cautions,
                    "leg-over-edge",
                    "The leg is longer than the edge it lies on is thick:"
                            + " the edge would be melted away. At most the edge's thickness counts.");
        }
    }

    private void caution(List<Caution> cautions, String cause, String text) {
        caution(cautions, cause, Phrase.of(text));
    }

    private void caution(List<Caution> cautions, String cause, Phrase text) {
        cautions.add(new Caution(cause, text, Optional.of(mark())));
    }

    private static String degrees(double angle) {
        return Long.toString(Math.round(Math.toDegrees(angle)));
    }

    private static String percent(double share) {
        return Math.max(1, Math.round(share * 100)) + " %";
    }
}
