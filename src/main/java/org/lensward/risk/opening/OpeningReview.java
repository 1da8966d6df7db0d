package org.lensward.risk.opening;

import static org.lensward.finding.FindingCode.OPENING_CENTRE_UNKNOWN;
import static org.lensward.finding.FindingCode.OPENING_DECENTRED;
import static org.lensward.finding.FindingCode.OPENING_MARGIN_THIN;
import static org.lensward.finding.FindingCode.OPENING_TOO_SMALL;
import static org.lensward.finding.FindingCode.OPTIC_DIAMETER_UNKNOWN;
import static org.lensward.finding.FindingCode.OPTIC_NOT_COVERED;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Eye;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.ImplantAdvice.ChooseMonofocal;
import org.lensward.risk.opening.ImplantAdvice.ChooseNonToric;
import org.lensward.risk.opening.ImplantAdvice.CoverIncomplete;
import org.lensward.risk.opening.ImplantAdvice.EnlargeFirst;
import org.lensward.risk.opening.ImplantAdvice.Settle;

/** Judges from the opening that was made whether the planned lens may still go in. */
public final class OpeningReview {

    /** Far below what any instrument resolves. */
    private static final double SAME = 1e-6;

    private final OpeningPolicy policy;

    public OpeningReview(OpeningPolicy policy) {
        this.policy = policy;
    }

    /**
     * The judgement; nothing where the opening was not measured.
     *
     * @param eye with the opening's diameter and decentration among its examination
     * @param lens the model planned
     * @param technique by which the capsule was opened
     */
    public Optional<OpeningJudgement> judge(Eye eye, LensModel lens, OpeningTechnique technique) {
        return AchievedOpening.of(eye, lens, technique).map(this::judge);
    }

    private OpeningJudgement judge(AchievedOpening opening) {
        List<ImplantAdvice> advice = new ArrayList<>();
        List<Finding> found = new ArrayList<>();
        unknown(opening, advice, found);
        small(opening, advice, found);
        opening.overlap().ifPresent(overlap -> cover(opening, overlap, advice, found));
        opening.decentration().ifPresent(apart -> offCentre(opening, apart, advice, found));
        return new OpeningJudgement(advice, opening.overlap(), found);
    }

    private static void unknown(AchievedOpening opening, List<ImplantAdvice> advice, List<Finding> found) {
        if (opening.optic().isEmpty()) {
            found.add(Finding.of(
                    OPTIC_DIAMETER_UNKNOWN,
                    opening.lens().evidence(),
                    opening.lens().name()));
            advice.add(new Settle("the optic's diameter"));
        }
        if (opening.decentration().isEmpty()) {
            found.add(Finding.of(OPENING_CENTRE_UNKNOWN, opening.diameter().evidence()));
            advice.add(new Settle("how far the opening lies off centre"));
        }
    }

    private void small(AchievedOpening opening, List<ImplantAdvice> advice, List<Finding> found) {
        Millimetres diameter = opening.diameter().value();
        if (exceeds(policy.smallest().value(), diameter)) {
            found.add(Finding.of(
                    OPENING_TOO_SMALL,
                    opening.diameter().evidence(),
                    diameter.rounded(),
                    policy.smallest().value().rounded()));
            Optional<EnlargeFirst> widened =
                    widening(opening).flatMap(room -> room.to(policy.smallest().value()));
            widened.ifPresentOrElse(
                    advice::add,
                    () -> advice.add(new Settle("whether to widen the opening, for its cover may leave no room")));
        }
    }

    private void cover(AchievedOpening opening, Overlap overlap, List<ImplantAdvice> advice, List<Finding> found) {
        if (!overlap.complete()) {
            found.add(Finding.of(
                    OPTIC_NOT_COVERED,
                    opening.evidence(),
                    overlap.opening().rounded(),
                    overlap.decentration().rounded(),
                    overlap.optic().rounded(),
                    overlap.freeEdge().rounded()));
            advice.add(new CoverIncomplete(overlap));
            plainer(opening, advice);
        } else if (exceeds(leastOverlap(opening), overlap.least())) {
            found.add(Finding.of(
                    OPENING_MARGIN_THIN,
                    opening.evidence(),
                    overlap.opening().rounded(),
                    overlap.optic().rounded(),
                    overlap.decentration().rounded(),
                    overlap.least().rounded(),
                    leastOverlap(opening).rounded()));
        }
    }

    /** A lens whose place matters less. */
    private static void plainer(AchievedOpening opening, List<ImplantAdvice> advice) {
        monofocal(opening, advice);
        if (opening.lens().isToric()) {
            advice.add(new ChooseNonToric());
        }
    }

    private static void monofocal(AchievedOpening opening, List<ImplantAdvice> advice) {
        if (opening.sharesLight().isEmpty()) {
            advice.add(new Settle("whether the lens is monofocal, which the catalogue does not say"));
        } else if (opening.sharesLight().get()) {
            advice.add(new ChooseMonofocal());
        }
    }

    private void offCentre(
            AchievedOpening opening, Measured<Millimetres> apart, List<ImplantAdvice> advice, List<Finding> found) {
        if (opening.sharesLight().orElse(true) && beyond(apart, policy.multifocalDecentration())) {
            String lens = opening.sharesLight().isPresent() ? "a multifocal lens" : "a lens not known to be monofocal";
            found.add(offCentre(apart, policy.multifocalDecentration(), lens));
            centred(opening, policy.multifocalDecentration())
                    .ifPresentOrElse(advice::add, () -> monofocal(opening, advice));
        }
        if (opening.lens().isToric() && beyond(apart, policy.toricDecentration())) {
            found.add(offCentre(apart, policy.toricDecentration(), "a toric lens"));
            centred(opening, policy.toricDecentration())
                    .ifPresentOrElse(advice::add, () -> advice.add(new ChooseNonToric()));
        }
    }

    private static Finding offCentre(Measured<Millimetres> apart, Limit<Millimetres> limit, String lens) {
        return Finding.of(
                OPENING_DECENTRED,
                apart.evidence(),
                apart.value().rounded(),
                limit.value().rounded(),
                lens);
    }

    private Optional<Widening> widening(AchievedOpening opening) {
        return opening.overlap().map(overlap -> new Widening(overlap, leastOverlap(opening)));
    }

    private Optional<EnlargeFirst> centred(AchievedOpening opening, Limit<Millimetres> limit) {
        return widening(opening).flatMap(room -> room.centreWithin(limit.value()));
    }

    private Millimetres leastOverlap(AchievedOpening opening) {
        return policy.of(opening.technique()).leastOverlap().value();
    }

    private static boolean beyond(Measured<Millimetres> measured, Limit<Millimetres> limit) {
        return exceeds(measured.value(), limit.value());
    }

    private static boolean exceeds(Millimetres one, Millimetres other) {
        return one.value() - other.value() > SAME;
    }
}
