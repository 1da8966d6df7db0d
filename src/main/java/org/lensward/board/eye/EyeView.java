package org.lensward.board.eye;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.board.api.Seen;
import org.lensward.check.CheckState;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Laterality;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.plan.EyePlan;
import org.lensward.plan.LensPlan;
import org.lensward.plan.PlanningCase;
import org.lensward.quantity.Degrees;
import org.lensward.record.PlanKey;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;

/**
 * One eye's plan as its page shows it: what the record would have planned now, and whether that is what stands written in it.
 *
 * @param key the booking's id
 * @param whose the patient
 * @param eye {@code RIGHT EYE}, or that it is not stated
 * @param when start of the operation
 * @param theatre where
 * @param state ready, provisional or withheld
 * @param fingerprint of the plan
 * @param policy version it was made under
 * @param written whether the record holds this very plan
 * @param begun whether the operation has begun, so that nothing is planned again
 * @param seen what a decision taken on this page is about
 * @param check where the lens check stands, where there is one
 * @param confirmedBy who confirmed, where somebody did
 * @param measured the biometry
 * @param pictures section and front view, drawn to scale
 * @param lens empty where the plan is withheld
 * @param risk of capsule rupture
 * @param theatrePart opening, dye, anaesthetic, precautions, things to bring
 * @param findings by severity
 */
record EyeView(
        String key,
        Whose whose,
        String eye,
        String when,
        String theatre,
        String state,
        String fingerprint,
        String policy,
        boolean written,
        boolean begun,
        Seen seen,
        Optional<CheckState> check,
        String confirmedBy,
        Optional<MeasuredPart> measured,
        Optional<Pictures> pictures,
        Optional<LensPart> lens,
        Optional<RiskPart> risk,
        TheatrePart theatrePart,
        List<FindingGroup> findings) {

    /** The two pictures, as SVG of our own making. */
    record Pictures(String side, String front) {

        static Pictures of(Figures figures) {
            return new Pictures(SideView.of(figures), FrontView.of(figures));
        }
    }

    /**
     * What stands about a booking beside its plan.
     *
     * @param gathered all that concerns it
     * @param seen plan and check
     * @param check where the lens check stands
     * @param confirmedBy who confirmed
     */
    record Standing(Bundle gathered, Seen seen, Optional<CheckState> check, String confirmedBy) {}

    static EyeView of(Planned planned, Standing standing, Degrees incision) {
        EyePlan plan = planned.plan();
        PlanningCase booked = planned.booked().planning();
        PlanKey key = PlanKey.of(planned.booked().request());
        Appointed appointed =
                Appointed.of(new Shelf(standing.gathered()), planned.booked().request());
        boolean begun = planned.publication() instanceof Publication.Nothing nothing
                && nothing.reason() == Publication.Reason.OPERATION_BEGUN;
        return new EyeView(
                planned.booked().request().getIdElement().getIdPart(),
                Whose.of(planned.booked().patient()),
                booked.eye().map(Eye::side).map(EyeView::words).orElse("EYE NOT STATED"),
                appointed.when(),
                appointed.theatre(),
                plan.state().code(),
                plan.fingerprint().brief(),
                plan.policyVersion(),
                !begun && planned.publication() instanceof Publication.Nothing,
                begun,
                standing.seen(),
                standing.check(),
                standing.confirmedBy(),
                booked.eye().flatMap(eye -> biometry(plan, eye).map(used -> MeasuredPart.of(eye, used))),
                booked.eye().flatMap(eye -> Figures.of(plan, eye, incision)).map(Pictures::of),
                plan.lens()
                        .map(lens -> LensPart.of(
                                lens,
                                booked.booking()
                                        .target()
                                        .map(each -> each.evidence())
                                        .orElse(plan.booking().evidence()),
                                key)),
                plan.rupture().map(risk -> RiskPart.of(risk, key)),
                TheatrePart.of(plan.theatre()),
                FindingGroup.of(plan.findings()));
    }

    private static Optional<Biometry> biometry(EyePlan plan, Eye eye) {
        return plan.lens().map(LensPlan::biometry).or(eye::biometry);
    }

    static String words(Laterality side) {
        return side.name() + " EYE";
    }

    /** Whether anything may still be decided. */
    public boolean open() {
        return written && check.filter(each -> each == CheckState.COMPLETED).isEmpty();
    }

    public boolean canConfirm() {
        return written
                && check.filter(each -> each == CheckState.AWAITING_CONFIRMATION)
                        .isPresent();
    }

    /** After a stop or a refusal the same lens may be chosen again. */
    public boolean canChooseAgain() {
        return written
                && check.filter(each -> each == CheckState.FAILED || each == CheckState.REFUSED)
                        .isPresent();
    }

    public boolean canRefuse() {
        return written
                && check.filter(each -> each == CheckState.AWAITING_CONFIRMATION
                                || each.next().isPresent())
                        .isPresent();
    }

    @Override
    public String toString() {
        return "EyeView[" + key + "]";
    }
}
