package org.lensward.risk.preparation;

import java.util.Map;
import java.util.TreeMap;
import org.lensward.eye.Sign;
import org.lensward.risk.TheatreItem;

/** A floppy iris or a small pupil. Having ever taken the drug counts; stopping it does not undo it. */
final class PupilCare implements Step {

    private static final String SOURCE =
            "Wang et al., Front Med 2022;9:941130 (relative risks by drug, abstract read); ever-use: common practice, no source";

    /** Relative risk of a floppy iris against no such drug: Wang et al., Front Med 2022;9:941130. */
    private static final Map<Sign, String> RISKS = new TreeMap<>(Map.of(
            Sign.TAMSULOSIN, ", 13.85 times the risk of a floppy iris",
            Sign.TERAZOSIN, ", 8.94 times the risk of a floppy iris",
            Sign.ALFUZOSIN, ", 7.73 times the risk of a floppy iris",
            Sign.DOXAZOSIN, ", 3.88 times the risk of a floppy iris",
            Sign.OTHER_ALPHA_BLOCKER, ", the iris may be floppy"));

    private final FrontPolicy policy;

    PupilCare(FrontPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.PUPIL);
        RISKS.forEach((sign, risk) ->
                facts.affirmed(sign).ifPresent(entry -> draft.because(entry.words() + risk, entry.evidence())));
        facts.unknown(RISKS.keySet()).forEach(sign -> draft.ask(Question.about(sign)));
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
}
