package org.lensward.risk.opening;

import static org.lensward.eye.Sign.CANNOT_COOPERATE;
import static org.lensward.eye.Sign.CANNOT_FIXATE;
import static org.lensward.eye.Sign.CANNOT_LIE_FLAT;
import static org.lensward.eye.Sign.CORNEAL_GRAFT;
import static org.lensward.eye.Sign.CORNEA_INCISED;
import static org.lensward.eye.Sign.CORNEA_IRREGULAR;
import static org.lensward.eye.Sign.KERATOCONUS;
import static org.lensward.eye.Sign.POSTERIOR_POLAR_CATARACT;
import static org.lensward.risk.opening.Bearing.ASKS;
import static org.lensward.risk.opening.Bearing.FAVOURS;
import static org.lensward.risk.opening.Bearing.FORBIDS;
import static org.lensward.risk.opening.Bearing.LEAVES_OPEN;
import static org.lensward.risk.opening.Bearing.NOT_AT_HAND;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;

/**
 * Weighs one technique for one eye. Where a sign would forbid the technique, the record's silence about it leaves the technique open;
 * where a sign would only ask for something, its silence asks to look first. The rules are common practice, no source, unless one says so.
 */
final class TechniqueWeighing {

    private static final Sign[] UNEVEN_CORNEA = {CORNEA_IRREGULAR, CORNEAL_GRAFT, KERATOCONUS, CORNEA_INCISED};

    private final OpeningPolicy policy;
    private final OpeningSizes sizes;
    private final DyeChoice dyes;

    TechniqueWeighing(OpeningPolicy policy) {
        this.policy = policy;
        this.sizes = new OpeningSizes(policy);
        this.dyes = new DyeChoice(policy.dye());
    }

    TechniqueView weigh(OpeningTechnique technique, OpeningCase which) {
        List<Reason> reasons = new ArrayList<>();
        if (!policy.of(technique).atHand()) {
            reasons.add(Reason.of(NOT_AT_HAND, "the hospital's policy does not have " + technique));
        }
        redReflex(technique, which, reasons);
        pressure(technique, which.facts(), reasons);
        zonules(technique, which.facts(), reasons);
        pupil(technique, which, reasons);
        stillness(technique, which.facts(), reasons);
        cornea(technique, which.facts(), reasons);
        posteriorPole(which.facts(), reasons);
        if (technique == DYE_LASER_COAGULATION) {
            reasons.addAll(dyes.reasons(policy.dye().forLaser(), which));
        }
        return TechniqueView.of(technique, reasons);
    }

    private void redReflex(OpeningTechnique technique, OpeningCase which, List<Reason> reasons) {
        Answer lost = which.facts().redReflexLost();
        if (technique == DYE_LASER_COAGULATION) {
            if (lost.yes()) {
                reasons.add(Reason.of(FAVOURS, "the dye it needs also shows the capsule", lost));
            }
        } else if (lost.open()) {
            reasons.add(Reason.of(ASKS, "look for the red reflex first, dye at hand; not recorded", lost));
        } else if (lost.yes()) {
            String words = dyes.forSight(which)
                    .map(dye -> "no red reflex: stain the capsule with " + dye.preparation())
                    .orElse("no red reflex and no dye this patient may have: light from the side, high magnification");
            reasons.add(Reason.of(ASKS, words, lost));
        }
    }

    private static void pressure(OpeningTechnique technique, CapsuleFacts facts, List<Reason> reasons) {
        if (!facts.mayBeUnderPressure()) {
            return;
        }
        String certainty = facts.swollen().yes() ? "the lens is under pressure: " : "the lens may be under pressure: ";
        Answer rests = facts.perhapsSwollen().orElseGet(facts::swollen);
        switch (technique) {
            case TORN_BY_HAND ->
                reasons.add(Reason.of(
                        ASKS,
                        certainty + "a tear may run to the edge; dense viscoelastic, let the fluid out, small first",
                        rests));
            case PHOTODISRUPTION ->
                reasons.add(Reason.of(
                        ASKS,
                        certainty + "fluid that escapes during the cut may leave it incomplete; free the disc by hand",
                        rests));
            case DYE_LASER_COAGULATION, THERMAL ->
                reasons.add(Reason.of(
                        FAVOURS,
                        certainty + "the whole edge is made at once, before the pressure can extend a tear",
                        rests));
        }
    }

    private static void zonules(OpeningTechnique technique, CapsuleFacts facts, List<Reason> reasons) {
        Answer weak = facts.weaklyHeld();
        if (!weak.yes()) {
            return;
        }
        reasons.add(
                technique == TORN_BY_HAND
                        ? Reason.of(ASKS, "tearing pulls on a weakly held lens: hooks at hand, small steps", weak)
                        : Reason.of(FAVOURS, "it pulls less on a weakly held lens than tearing does", weak));
    }

    private void pupil(OpeningTechnique technique, OpeningCase which, List<Reason> reasons) {
        Optional<OpeningSize> size = sizes.plan(technique, which);
        var pupil = which.eye().pupil();
        boolean docked = technique == PHOTODISRUPTION;
        if (pupil.isEmpty() || size.isEmpty()) {
            String unknown = pupil.isEmpty() ? "the dilated pupil" : "the diameter to make";
            reasons.add(Reason.of(
                    docked ? LEAVES_OPEN : ASKS, "not known: " + unknown + "; the pupil must show the whole opening"));
            return;
        }
        Millimetres opening = size.get().diameter();
        Millimetres needed = docked ? opening.plus(policy.pupilMargin().value()) : opening;
        if (pupil.get().value().compareTo(needed) < 0) {
            String words = "the pupil of " + pupil.get().value().rounded() + " is narrower than the " + needed.rounded()
                    + " needed";
            reasons.add(new Reason(
                    docked ? FORBIDS : ASKS,
                    docked ? words : words + ": widen it first",
                    List.of(pupil.get().evidence())));
        }
    }

    private static void stillness(OpeningTechnique technique, CapsuleFacts facts, List<Reason> reasons) {
        if (technique == PHOTODISRUPTION) {
            for (Sign sign : List.of(CANNOT_FIXATE, CANNOT_LIE_FLAT, CANNOT_COOPERATE)) {
                forbidding(facts.any(sign), "the laser cannot be docked", reasons);
            }
        } else if (technique == DYE_LASER_COAGULATION) {
            Answer restless = facts.any(CANNOT_FIXATE, CANNOT_COOPERATE);
            if (restless.yes()) {
                reasons.add(Reason.of(ASKS, "the eye must be kept still for the laser by its anaesthetic", restless));
            }
        }
    }

    private static void cornea(OpeningTechnique technique, CapsuleFacts facts, List<Reason> reasons) {
        Answer uneven = facts.any(UNEVEN_CORNEA);
        if (technique == PHOTODISRUPTION) {
            forbidding(uneven, "the laser's light does not reach the capsule evenly", reasons);
        } else if (uneven.yes()) {
            reasons.add(Reason.of(
                    ASKS,
                    technique == DYE_LASER_COAGULATION
                            ? "an uneven cornea bends the laser's light: coat its surface and look that the spot is sharp"
                            : "an uneven cornea hides the edge: coat its surface",
                    uneven));
        }
    }

    private static void posteriorPole(CapsuleFacts facts, List<Reason> reasons) {
        Answer polar = facts.any(POSTERIOR_POLAR_CATARACT);
        if (polar.yes()) {
            reasons.add(Reason.of(
                    ASKS, "no hydrodissection; an opening smaller than the optic, that could capture it", polar));
        }
    }

    private static void forbidding(Answer answer, String words, List<Reason> reasons) {
        if (answer.yes()) {
            reasons.add(Reason.of(FORBIDS, words, answer));
        } else if (answer.open()) {
            reasons.add(Reason.of(LEAVES_OPEN, words + " if so, and the record does not say", answer));
        }
    }
}
