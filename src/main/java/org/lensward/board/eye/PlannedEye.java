package org.lensward.board.eye;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.board.api.Seen;
import org.lensward.flow.BundlePlanning.Planned;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensPolicy;
import org.lensward.lens.LensSite;
import org.lensward.lens.TargetSide;
import org.lensward.plan.PowerRow;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.record.check.StoredCheck;

/**
 * One booking at one moment: what was gathered, the plan made of it, the check that stands.
 *
 * @param gathered all that concerns it
 * @param planned its plan
 * @param seen plan and check as whoever looks now sees them
 * @param check the lens check, where there is one
 */
record PlannedEye(Bundle gathered, Planned planned, Seen seen, Optional<StoredCheck> check) {

    /** Half of the last digit of a label. */
    private static final double ONE_LABEL = 0.005;

    /**
     * A lens model to choose.
     *
     * @param reference as the record refers to it
     * @param name as the hospital calls it
     */
    record Model(String reference, String name) {

        static Model of(LensModel model) {
            return new Model(model.evidence().resource(), model.name());
        }
    }

    EyeView view(LensPolicy policy) {
        String surgeon = planned.booked().planning().booking().surgeonName().orElse("");
        Degrees incision = policy.incision(surgeon).meridian();
        return EyeView.of(
                planned,
                new EyeView.Standing(
                        gathered,
                        seen,
                        check.map(each -> each.progress().state()),
                        check.map(StoredCheck::confirmedBy).orElse("")),
                incision);
    }

    /** Every model for the capsular bag. */
    List<Model> models() {
        return planned.booked().planning().catalogue().models().stream()
                .filter(each -> each.site() == LensSite.CAPSULAR_BAG)
                .map(Model::of)
                .toList();
    }

    /**
     * The target for which the policy chooses that labelled power: the refraction that the chosen formula predicts of it, to the hundredth
     * on the side that keeps it the nearest step.
     */
    Optional<Dioptres> targetFor(Dioptres power, TargetSide side) {
        return planned.plan().lens().flatMap(lens -> lens.chosen().table().stream()
                .filter(row -> row.power().distanceTo(power).value() < ONE_LABEL)
                .map(PowerRow::predicted)
                .map(predicted -> hundredth(predicted, side))
                .findFirst());
    }

    private static Dioptres hundredth(Dioptres predicted, TargetSide side) {
        double hundredths = predicted.value() * 100;
        double kept =
                switch (side) {
                    case NEAREST -> Math.rint(hundredths);
                    case MYOPIC -> Math.ceil(hundredths);
                    case HYPEROPIC -> Math.floor(hundredths);
                };
        return Dioptres.of(kept == 0 ? 0 : kept / 100);
    }

    @Override
    public String toString() {
        return planned.booked().toString();
    }
}
