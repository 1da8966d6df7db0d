package org.lensward.risk.preparation;

import java.util.Set;
import java.util.TreeSet;
import org.lensward.eye.Sign;
import org.lensward.risk.FloppyIris;
import org.lensward.risk.TheatreItem;

/** A floppy iris or a small pupil. Having ever taken the drug counts; stopping it does not undo it. */
final class PupilCare implements Step {

    private static final String SOURCE =
            "Wang et al., Front Med 2022;9:941130 (relative risks by drug, abstract read); ever-use: common practice, no source";

    private static final Set<Sign> DRUGS = new TreeSet<>(FloppyIris.DRUGS);

    private final FrontPolicy policy;

    PupilCare(FrontPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.PUPIL);
        DRUGS.forEach(drug -> facts.affirmed(drug)
                .ifPresent(entry -> draft.because(entry.words() + ", " + risk(drug), entry.evidence())));
        facts.unknown(DRUGS).forEach(sign -> draft.ask(Question.about(sign)));
        draft.below("dilated pupil", facts.eye().pupil(), policy.smallPupil());
        if (!draft.hasReasons()) {
            sheet.add(draft, "", SOURCE);
            return;
        }
        AgentChoice choice = sheet.choose(Purpose.MYDRIATIC, draft);
        draft.bring(TheatreItem.IRIS_HOOKS).bring(TheatreItem.PUPIL_RING);
        sheet.add(
                draft,
                "Into the anterior chamber: " + choice.words()
                        + "; iris hooks or a pupil ring at hand; tight incisions, gentle flow.",
                SOURCE);
    }

    private static String risk(Sign drug) {
        return FloppyIris.ratio(drug)
                .map(ratio -> ratio.value() + " times the risk of a floppy iris")
                .orElse("the iris may be floppy");
    }
}
