package org.lensward.risk.opening;

import static org.lensward.lens.OpticMaterial.HYDROPHILIC_ACRYLIC;
import static org.lensward.risk.opening.Bearing.ASKS;
import static org.lensward.risk.opening.Bearing.FORBIDS;
import static org.lensward.risk.opening.Bearing.LEAVES_OPEN;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lensward.eye.Allergy;
import org.lensward.lens.OpticMaterial;

/** Whether a dye may be used in this eye, and which. */
final class DyeChoice {

    private final DyePolicy policy;

    DyeChoice(DyePolicy policy) {
        this.policy = policy;
    }

    /** The first preparation that makes the capsule visible and that nothing forbids. */
    Optional<DyePlan> forSight(OpeningCase which) {
        return policy.forSight().stream()
                .filter(each -> reasons(each, which).stream().noneMatch(reason -> reason.bearing() == FORBIDS))
                .findFirst()
                .map(this::plan);
    }

    DyePlan forLaser() {
        return plan(policy.forLaser());
    }

    /** Everything that bears on using that preparation in this eye. */
    List<Reason> reasons(DyePreparation preparation, OpeningCase which) {
        List<Reason> reasons = new ArrayList<>();
        allergies(preparation, which, reasons);
        concentration(preparation, reasons);
        optic(preparation, which, reasons);
        return reasons;
    }

    private static void allergies(DyePreparation preparation, OpeningCase which, List<Reason> reasons) {
        for (Allergy allergy : which.person().allergies()) {
            if (allergy.to().isEmpty()) {
                reasons.add(new Reason(
                        LEAVES_OPEN,
                        "the record does not say whether the allergy to " + allergy.words() + " is to "
                                + preparation.agent(),
                        List.of(allergy.evidence())));
            } else if (preparation.agent().allergens().stream().anyMatch(allergy.to()::contains)) {
                reasons.add(new Reason(
                        FORBIDS,
                        preparation.agent() + " is forbidden by the allergy to " + allergy.words(),
                        List.of(allergy.evidence())));
            }
        }
    }

    private void concentration(DyePreparation preparation, List<Reason> reasons) {
        if (!policy.unusual(preparation)) {
            return;
        }
        String unusual = String.format(
                Locale.ROOT,
                "%s is %.1f times the usual %s",
                preparation,
                plan(preparation).timesUsual().value(),
                policy.range(preparation).usual().value());
        reasons.add(policy.protocol(preparation)
                .map(protocol ->
                        Reason.of(ASKS, unusual + ", permitted only by the local protocol '" + protocol.name() + "'"))
                .orElseGet(() -> Reason.of(FORBIDS, unusual + ", and no local protocol permits it")));
    }

    private static void optic(DyePreparation preparation, OpeningCase which, List<Reason> reasons) {
        Optional<OpticMaterial> material = which.lens().design().material();
        if (material.isEmpty()) {
            reasons.add(Reason.of(
                    ASKS,
                    "the catalogue does not say what the optic is made of: "
                            + "find out that it takes up no dye before it goes in"));
        } else if (stains(which)) {
            reasons.add(new Reason(
                    ASKS,
                    preparation.agent() + " may stain the water-rich optic: every trace washed out before it goes in",
                    List.of(which.lens().evidence())));
        }
    }

    static boolean stains(OpeningCase which) {
        return which.lens()
                .design()
                .material()
                .filter(HYDROPHILIC_ACRYLIC::equals)
                .isPresent();
    }

    private DyePlan plan(DyePreparation preparation) {
        Optional<String> protocol =
                policy.unusual(preparation) ? policy.protocol(preparation).map(DyeProtocol::name) : Optional.empty();
        return new DyePlan(
                preparation,
                policy.range(preparation).timesUsual(preparation.concentration().value()),
                protocol);
    }
}
