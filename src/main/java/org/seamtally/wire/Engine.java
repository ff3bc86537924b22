package org.seamtally.wire;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;
import org.joda.money.CurrencyUnit;
import org.seamtally.catalogue.Catalogue;
import org.seamtally.frame.Basis;
import org.seamtally.frame.Caution;
import org.seamtally.frame.EarlierWork;
import org.seamtally.frame.FrameCautions;
import org.seamtally.frame.FrameEstimate;
import org.seamtally.frame.FrameEstimator;
import org.seamtally.frame.GasEstimator;
import org.seamtally.frame.GasInquiry;
import org.seamtally.frame.JointWork;
import org.seamtally.frame.Problem;
import org.seamtally.frame.ReviewEstimator;
import org.seamtally.frame.UnworkableException;
import org.seamtally.gas.SetUpComparison;
import org.seamtally.gas.UnsteadyException;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Rate;
import org.seamtally.quantity.UnitSystem;

/** The one entry: a text in, an answer or a problem out. The service, the shell and batches all call it. */
public final class Engine {

    private final EngineAnswer identity;
    private final EarlierWork earlier = new EarlierWork();
    private final FrameEstimator estimator = new FrameEstimator(earlier);
    private final ReviewEstimator reviews = new ReviewEstimator();
    private final GasEstimator gases = new GasEstimator(earlier);

    private final LongSupplier nanoseconds;

    /** @param version of the program */
    public Engine(String version) {
        this(version, System::nanoTime);
    }

    /**
     * An engine with a clock of its own.
     *
     * @param version of the program
     * @param nanoseconds since some moment, for the limit of a frame
     */
    public Engine(String version, LongSupplier nanoseconds) {
        identity = new EngineAnswer(version, Catalogue.version());
        this.nanoseconds = nanoseconds;
    }

    /** What computes. */
    public EngineAnswer identity() {
        return identity;
    }

    /** What is kept between requests, for its metrics. */
    public EarlierWork earlier() {
        return earlier;
    }

    /** Estimates a frame from a {@link FrameEstimateRequest}. */
    public Outcome<FrameEstimateAnswer> frameEstimate(InputStream in, UnitSystem units) throws IOException {
        return answer(in, FrameEstimateRequest.class, request -> shown(request, estimate(request), units));
    }

    /**
     * The same in brief.
     *
     * @param joint the one that is answered in full, by its place in the list, from 1; empty for none
     */
    public Outcome<FrameTotalsAnswer> frameTotals(InputStream in, UnitSystem units, OptionalInt joint)
            throws IOException {
        return answer(in, FrameEstimateRequest.class, request -> {
            int joints = request.frame().joints().size();
            if (joint.isPresent() && joint.getAsInt() > joints) {
                throw new RefusedException(ProblemReport.badQuery(
                        "joint", Integer.toString(joint.getAsInt()), List.of("a joint's place from 1 to " + joints)));
            }
            FrameEstimate estimate = estimate(request);
            Shown shown = new Shown(units);
            JointAnswer whole = null;
            if (joint.isPresent()) {
                int at = joint.getAsInt() - 1;
                whole = JointAnswer.of(
                        estimate.joints().get(at), kind(request.frame().joints().get(at)), shown);
            }
            return FrameTotalsAnswer.of(estimate, whole, shown, identity);
        });
    }

    /** Estimates a frame whose request was read and fits. */
    FrameEstimate estimate(FrameEstimateRequest request) throws RefusedException {
        try {
            Runnable beforeJoint = new FrameDeadline(nanoseconds)::check;
            return worked(request, fitting -> estimator.estimate(fitting.job(), beforeJoint));
        } catch (FrameDeadline.PassedException e) {
            throw new RefusedException(FrameDeadline.ABANDONED);
        }
    }

    /** An estimate as it is answered. */
    FrameEstimateAnswer shown(FrameEstimateRequest request, FrameEstimate estimate, UnitSystem units) {
        List<String> kinds = request.frame().joints().stream().map(Engine::kind).toList();
        return FrameEstimateAnswer.of(estimate, kinds, new Shown(units), identity);
    }

    private static String kind(JointRequest joint) {
        return JointKinds.nameOf(joint.getClass());
    }

    /** Estimates a frame of a job file, or says what is wrong with it: never throws for what the file holds. */
    public JobLine jobLine(JobFrame frame, UnitSystem units) {
        return jobLines(List.of(frame), units).get(0);
    }

    /**
     * The same for several frames, each step for all of them before the next: the program as a whole is larger than a
     * processor's caches, and frame by frame every step would have to be fetched anew, which takes a tenth more time.
     */
    public List<JobLine> jobLines(List<JobFrame> frames, UnitSystem units) {
        List<JobInHand> jobs = frames.stream().map(JobInHand::new).toList();
        jobs.forEach(JobInHand::read);
        jobs.forEach(job -> job.estimate(request -> {
            FrameDeadline deadline = new FrameDeadline(nanoseconds);
            return worked(request, fitting -> estimator.estimate(fitting.job(), deadline::check));
        }));
        jobs.forEach(job -> job.answer(done -> shown(done.request(), done.estimate(), units)));
        return jobs.stream().map(JobInHand::line).toList();
    }

    /** One joint's seam, deposit and filler from a {@link OneJointRequest}. */
    public Outcome<DepositAnswer> deposit(InputStream in, UnitSystem units) throws IOException {
        return deposit(in, units, false);
    }

    /** The same, with the places along the seam where they are asked for. */
    public Outcome<DepositAnswer> deposit(InputStream in, UnitSystem units, boolean course) throws IOException {
        Shown shown = new Shown(units);
        return oneJoint(in, single -> {
            JointWork work = single.work();
            SeamAnswer seam = SeamAnswer.of(work.seam(), shown);
            FillerAnswer filler = FillerAnswer.of(work.filler(), shown);
            return new DepositAnswer(
                    seam,
                    filler,
                    course ? PlaceAnswer.of(work.joint(), shown) : null,
                    AssumptionAnswer.of(single.assumptions(), shown),
                    BasisAnswer.of(List.of(Basis.SEAM, Basis.FILLER)),
                    cautions(work, shown),
                    identity);
        });
    }

    /** One joint's travel speed, arc time and heat input from a {@link OneJointRequest}. */
    public Outcome<ArcTimeAnswer> arcTime(InputStream in, UnitSystem units) throws IOException {
        Shown shown = new Shown(units);
        return oneJoint(in, single -> {
            JointWork work = single.work();
            ArcAnswer arc = ArcAnswer.of(work.arc(), work.arcSettings(), shown);
            return new ArcTimeAnswer(
                    arc,
                    AssumptionAnswer.of(single.assumptions(), shown),
                    BasisAnswer.of(List.of(Basis.SEAM, Basis.ARC)),
                    cautions(work, shown),
                    identity);
        });
    }

    /** One joint's preheat from a {@link OneJointRequest}; asking is enough, the joint need not say so. */
    public Outcome<JointPreheatAnswer> preheat(InputStream in, UnitSystem units) throws IOException {
        Shown shown = new Shown(units);
        return answer(in, OneJointRequest.class, request -> {
            FrameEstimator.Single single = estimator.preheated(request.joint().given(), request.settings());
            JointWork work = single.work();
            PreheatAnswer preheat = PreheatAnswer.of(
                    work.preheat().orElseThrow(), work.plan().orElseThrow().source(), shown);
            PreheatAdviceAnswer recommended = work.preheatAdvice()
                    .map(advice -> PreheatAdviceAnswer.of(advice, shown))
                    .orElse(null);
            return new JointPreheatAnswer(
                    preheat,
                    recommended,
                    AssumptionAnswer.of(single.assumptions(), shown),
                    BasisAnswer.of(List.of(Basis.PREHEAT, Basis.METAL)),
                    cautions(work, shown),
                    identity);
        });
    }

    /** A steel and its fillers from a {@link SteelReviewRequest}. */
    public Outcome<SteelReviewAnswer> steelReview(InputStream in, UnitSystem units) throws IOException {
        return answer(
                in,
                SteelReviewRequest.class,
                request -> SteelReviewAnswer.of(reviews.review(request.given()), new Shown(units), identity));
    }

    /** One set-up's losses from a {@link GasLossRequest}. */
    public Outcome<GasLossAnswer> gasLoss(InputStream in, UnitSystem units) throws IOException {
        Shown shown = new Shown(units);
        return answer(in, GasLossRequest.class, request -> {
            GasInquiry inquiry = gases.inquiry(
                    GasRequest.given(request.gas()),
                    ArcRequest.given(request.arc()),
                    Read.quantity(request.burnTime(), Dimension.TIME),
                    Read.quantity(request.arcOffTime(), Dimension.TIME),
                    Read.maybe(request.joint()).map(JointRequest::given));
            return new GasLossAnswer(
                    PerStartAnswer.of(inquiry.perStart(), request.burnTime() != null, shown),
                    SteadyAnswer.of(inquiry.filled().steady(), shown),
                    StartAnswer.of(inquiry.filled(), shown),
                    inquiry.joint()
                            .map(joint -> GasAnswer.of(joint.use(), joint.stored(), shown))
                            .orElse(null),
                    AssumptionAnswer.of(inquiry.assumptions(), shown),
                    BasisAnswer.of(List.of(Basis.GAS)),
                    CautionAnswer.of(inquiry.cautions(), shown),
                    identity);
        });
    }

    /** Set-ups compared from a {@link ComparisonRequest}. */
    public Outcome<ComparisonAnswer> comparison(InputStream in, UnitSystem units) throws IOException {
        Shown shown = new Shown(units);
        return answer(in, ComparisonRequest.class, request -> {
            GasEstimator.Comparison comparison = compare(request);
            Optional<CurrencyUnit> currency = Read.maybe(Words.currency(request.currency()));
            SetUpComparison compared = comparison.compared();
            return new ComparisonAnswer(
                    IntStream.range(0, compared.setUps().size())
                            .mapToObj(i -> SetUpAnswer.of(
                                    compared.setUps().get(i),
                                    comparison.orifices().get(i),
                                    compared.duty().startsPerYear(),
                                    currency,
                                    shown))
                            .toList(),
                    compared.best().map(best -> best.name()).orElse(null),
                    currency.map(CurrencyUnit::getCode).orElse(null),
                    AssumptionAnswer.of(comparison.assumptions(), shown),
                    BasisAnswer.of(List.of(Basis.GAS)),
                    CautionAnswer.of(comparison.cautions(), shown),
                    identity);
        });
    }

    private GasEstimator.Comparison compare(ComparisonRequest request) {
        DutyRequest duty = request.duty();
        Rate price = Read.rate(request.gasPrice(), Dimension.GAS_VOLUME);
        Optional<BigDecimal> perCubicMetre = Read.maybe(price).map(rate -> rate.of(1));
        return gases.compare(
                new GasEstimator.GivenDuty(
                        Read.whole(duty.startsPerShift()),
                        Read.quantity(duty.burnTime(), Dimension.TIME),
                        Read.quantity(duty.arcOffTime(), Dimension.TIME),
                        Read.whole(duty.shiftsPerYear()),
                        Read.quantity(duty.current(), Dimension.CURRENT)),
                GasRequest.given(request.gas()),
                request.setUps().stream()
                        .map(setUp -> new GasEstimator.GivenSetUp(
                                setUp.name().text(),
                                setUp.over(GasRequest.given(request.gas())),
                                Read.maybe(Read.decimal(setUp.price()))))
                        .toList(),
                perCubicMetre);
    }

    private static List<CautionAnswer> cautions(JointWork work, Shown shown) {
        List<Caution> all = new ArrayList<>(work.cautions());
        all.addAll(FrameCautions.always());
        return CautionAnswer.of(all, shown);
    }

    private <A> Outcome<A> oneJoint(InputStream in, Work<FrameEstimator.Single, A> work) throws IOException {
        return answer(
                in,
                OneJointRequest.class,
                request -> work.on(estimator.single(request.joint().given(), request.settings())));
    }

    /** What is done with a request that fits. */
    private interface Work<R, A> {
        A on(R request) throws RefusedException;
    }

    private static <R, A> Outcome<A> answer(InputStream in, Class<R> type, Work<R, A> work) throws IOException {
        try {
            return new Outcome.Answered<>(worked(RequestReader.read(in, type), work));
        } catch (RefusedException e) {
            return new Outcome.Refused<>(e.problem());
        }
    }

    private static <R, A> A worked(R request, Work<R, A> work) throws RefusedException {
        try {
            return work.on(request);
        } catch (UnsteadyException e) {
            // the transient gave up on a set-up far from anything that gas flows through
            throw new RefusedException(ProblemReport.invalid(List.of(new Violation(
                    "gas", Violation.Key.OUT_OF_RANGE, "this gas set-up cannot be worked out", null, null))));
        } catch (UnworkableException e) {
            throw RequestReader.refused(
                    request, e.problems().stream().map(Engine::violation).toList());
        }
    }

    private static Violation violation(Problem problem) {
        return new Violation(problem.path(), problem.key(), problem.message(), null, null);
    }
}
