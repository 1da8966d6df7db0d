package org.lensward.plan;

import static org.lensward.finding.FindingCode.LENS_MODEL_NOT_CHOSEN;
import static org.lensward.finding.FindingCode.LENS_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.TARGET_HYPEROPIC;
import static org.lensward.finding.FindingCode.TARGET_NOT_RECORDED;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.EyeStatus;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Measured;
import org.lensward.eye.QualityGates;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.finding.Severity;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensSite;
import org.lensward.lens.MeasuredEye;
import org.lensward.lens.PlanningMethods;
import org.lensward.optics.PostLaserMethods;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.RuptureModel;
import org.lensward.risk.RuptureRisk;
import org.lensward.risk.named.EyeRisks;
import org.lensward.risk.named.Subject;

/**
 * Makes the plan of one eye from all that the record says of it. Pure: the same case under the same policy gives the same plan. Every
 * finding is collected; any that withholds leaves the plan without a lens.
 */
public final class Planner {

    private final Policy policy;
    private final String version;
    private final QualityGates gates;
    private final LensPlanner lenses;
    private final AddedLensNotes addedLenses;
    private final RuptureModel ruptures;
    private final EyeRisks risks;
    private final TheatrePlanner theatre;

    public Planner(Policy policy) {
        this(policy, policy.version());
    }

    /**
     * Under a policy and whatever else decides what is made of a record.
     *
     * @param policy the hospital's
     * @param version changes with the policy and with anything else of that kind; every plan records it
     */
    public Planner(Policy policy, String version) {
        this.policy = policy;
        this.version = version;
        this.gates = new QualityGates(policy.biometry());
        this.lenses = new LensPlanner(policy.lens());
        this.addedLenses = new AddedLensNotes(policy.lens());
        this.ruptures = new RuptureModel(policy.risk());
        this.risks = new EyeRisks(policy.risk(), policy.preparation());
        this.theatre = new TheatrePlanner(policy);
    }

    /** The plan: ready, provisional under named conditions, or withheld for named reasons. */
    public EyePlan plan(PlanningCase booked) {
        List<Finding> found = new ArrayList<>(booked.found());
        booked.eye().map(EyeStatus::judge).ifPresent(found::addAll);
        booked.eye().map(PlanningMethods::refused).ifPresent(found::addAll);
        Optional<Outcome<Biometry>> heard =
                booked.eye().flatMap(eye -> eye.biometry().map(biometry -> SoundCorrection.of(eye, biometry)));
        // On the length as corrected: what sound was misled by would hide an unusual eye, or make one up.
        PlanningCase mended =
                heard.flatMap(Outcome::value).map(booked::measured).orElse(booked);
        found.addAll(gates(mended));
        mended.eye().flatMap(this::suspect).ifPresent(found::add);
        Optional<RuptureRisk> rupture = rupture(mended, found);
        Optional<LensPlan> proposed = lens(mended, heard, found);
        Optional<LensPlan> lens = Finding.withhold(found.stream()) ? Optional.empty() : proposed;
        TheatrePlan around = theatre.plan(mended, lens);
        found.addAll(around.findings());
        return assemble(booked, new Made(lens, rupture, around), found);
    }

    /** A cornea that looks reshaped in a record that does not mention it. */
    private Optional<Finding> suspect(Eye eye) {
        return PlanningMethods.reshaping(eye).isPresent()
                ? Optional.empty()
                : eye.biometry()
                        .map(Biometry::keratometry)
                        .flatMap(cornea -> PostLaserMethods.suspect(
                                new Measured<>(
                                        cornea.value().meanPower(),
                                        cornea.evidence().at("component")),
                                policy.lens().suspectFlatCornea(),
                                policy.lens().suspectSteepCornea()));
    }

    private Optional<RuptureRisk> rupture(PlanningCase booked, List<Finding> found) {
        if (booked.eye().isEmpty() || booked.booking().operation().isEmpty()) {
            return Optional.empty();
        }
        Eye eye = booked.eye().get();
        LocalDate operation = booked.booking().operation().get();
        RuptureRisk rupture = ruptures.assess(
                booked.person(), eye, operation, booked.booking().surgeon());
        found.addAll(risks.name(new Subject(booked.person(), eye, operation), rupture));
        return Optional.of(rupture);
    }

    /** Target and model are judged even where there is no biometry, so that all that is wrong is said at once. */
    private Optional<LensPlan> lens(PlanningCase booked, Optional<Outcome<Biometry>> heard, List<Finding> found) {
        Measured<Dioptres> target = target(booked.booking(), found);
        Outcome<LensModel> model = model(booked);
        if (heard.isEmpty()) {
            found.addAll(model.findings());
            return Optional.empty();
        }
        Eye eye = booked.eye().orElseThrow();
        found.addAll(addedLenses.of(eye, booked.catalogue(), target.value()));
        Outcome<LensPlan> lens = model.then(chosen -> heard.get()
                .then(biometry -> lenses.plan(
                        chosen,
                        booked.catalogue(),
                        new LensPlanner.Task(
                                eye,
                                booked.fellow().orElseThrow(),
                                new MeasuredEye(biometry, oilStays(eye)),
                                target,
                                booked.booking().surgeonName().orElse("")))));
        boolean doubted = Finding.withhold(found.stream());
        lens.findings().stream()
                .filter(finding -> !doubted || finding.severity() == Severity.WITHHOLDS)
                .forEach(found::add);
        return lens.value();
    }

    private static Optional<Evidence> oilStays(Eye eye) {
        return eye.history().affirmed(Sign.SILICONE_OIL_STAYS).map(Entry::evidence);
    }

    private List<Finding> gates(PlanningCase booked) {
        Optional<Biometry> biometry = booked.eye().flatMap(Eye::biometry);
        if (biometry.isEmpty()
                || booked.fellow().isEmpty()
                || booked.booking().operation().isEmpty()) {
            return List.of();
        }
        return gates.judge(
                biometry.get(),
                booked.eye().orElseThrow(),
                booked.fellow().get(),
                booked.booking().operation().get());
    }

    private Measured<Dioptres> target(Booking booking, List<Finding> found) {
        booking.target()
                .filter(target ->
                        target.value().compareTo(policy.lens().hyperopicTarget().value()) > 0)
                .ifPresent(target -> found.add(Finding.of(TARGET_HYPEROPIC, target.evidence(), target.value())));
        return booking.target().orElseGet(() -> {
            Dioptres target = policy.lens().target().value();
            found.add(Finding.of(TARGET_NOT_RECORDED, booking.evidence(), target));
            return new Measured<>(target, booking.evidence());
        });
    }

    private static Outcome<LensModel> model(PlanningCase booked) {
        Optional<Measured<String>> named = booked.booking().lensModel();
        if (named.isPresent()) {
            return booked.catalogue()
                    .named(named.get().value())
                    .filter(model -> model.site() == LensSite.CAPSULAR_BAG)
                    .map(Outcome::ready)
                    .orElseGet(() -> Outcome.withheld(Finding.of(
                            LENS_MODEL_UNKNOWN,
                            named.get().evidence(),
                            named.get().value())));
        }
        List<LensModel> offered = booked.catalogue().houseLenses(LensSite.CAPSULAR_BAG);
        return offered.size() == 1
                ? Outcome.ready(offered.get(0))
                : Outcome.withheld(
                        Finding.of(LENS_MODEL_NOT_CHOSEN, booked.booking().evidence(), offered.size()));
    }

    private EyePlan assemble(PlanningCase booked, Made made, List<Finding> found) {
        List<Finding> findings = found.stream()
                .distinct()
                .sorted(Comparator.comparing(Finding::severity)
                        .thenComparing(Finding::code)
                        .thenComparing(Finding::message)
                        .thenComparing(finding -> finding.evidence().get(0)))
                .toList();
        List<Finding> weighed = findings.stream()
                .filter(finding -> finding.code() != FindingCode.CODE_UNMAPPED)
                .toList();
        // What nobody understands cannot change a plan; a new blood pressure must not void a lens check.
        List<Evidence> basis = Basis.of(booked, made, weighed);
        return new EyePlan(
                booked.booking(),
                booked.person(),
                state(made.lens(), findings),
                made.lens(),
                made.rupture(),
                made.theatre(),
                findings,
                basis,
                Fingerprint.of(basis, weighed, version),
                version);
    }

    private static PlanState state(Optional<LensPlan> lens, List<Finding> findings) {
        if (lens.isEmpty()) {
            return PlanState.WITHHELD;
        }
        boolean conditional = findings.stream().anyMatch(finding -> finding.severity() == Severity.CONDITION);
        return conditional ? PlanState.PROVISIONAL : PlanState.READY;
    }
}
