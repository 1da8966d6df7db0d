package org.lensward.risk.opening;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Eye;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.opening.Answer.Said;

/** What the record answers to the questions that opening the capsule asks of an eye. */
record CapsuleFacts(Eye eye) {

    private static final Sign[] HOLDING_LOOSELY = {
        Sign.PHACODONESIS,
        Sign.LENS_DISLOCATION,
        Sign.PSEUDOEXFOLIATION,
        Sign.VITRECTOMY,
        Sign.EYE_INJURY,
        Sign.MARFAN_SYNDROME
    };

    Answer any(Sign... signs) {
        return Answer.any(eye.history(), signs);
    }

    /** Whether the red reflex that shows the capsule's edge is lost. A fundus that was seen answers no. */
    Answer redReflexLost() {
        Answer lens = any(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS, Sign.FUNDUS_NOT_SEEN);
        return lens.open() && eye.history().denied(Sign.FUNDUS_NOT_SEEN)
                ? new Answer(Said.NO, lens.words(), List.of())
                : lens;
    }

    Answer swollen() {
        return any(Sign.SWOLLEN_LENS);
    }

    /** A brown or white lens of which nobody says whether it is swollen. */
    Optional<Answer> perhapsSwollen() {
        Answer white = any(Sign.BROWN_OR_WHITE_LENS);
        return white.yes() && swollen().open() ? Optional.of(white) : Optional.empty();
    }

    boolean mayBeUnderPressure() {
        return swollen().yes() || perhapsSwollen().isPresent();
    }

    /** Whether the lens is weakly held: by its signs, or by zonule seen to be missing. */
    Answer weaklyHeld() {
        Answer signs = any(HOLDING_LOOSELY);
        Optional<Measured<PureNumber>> missing =
                eye.examination().zonuleLoss().filter(hours -> hours.value().value() > 0);
        if (missing.isEmpty()) {
            return signs;
        }
        String loss = missing.get().value().value() + " clock hours of zonule missing";
        List<Evidence> evidence = Stream.concat(
                        signs.evidence().stream(), Stream.of(missing.get().evidence()))
                .toList();
        return new Answer(Said.YES, signs.yes() ? signs.words() + ", " + loss : loss, evidence);
    }
}
