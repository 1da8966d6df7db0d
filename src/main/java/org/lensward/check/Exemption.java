package org.lensward.check;

import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/** Whether a clinician goes on in spite of a difference. Never silent: it names two people and a reason, and is recorded. */
public sealed interface Exemption {

    /** Nobody does. */
    record None() implements Exemption {}

    /**
     * A clinician does.
     *
     * @param clinician who decides
     * @param reason why
     * @param second who stands by the decision; another person
     */
    record Signed(String clinician, String reason, String second) implements Exemption {
        public Signed {
            clinician = clinician.strip();
            reason = reason.strip();
            second = second.strip();
            if (clinician.isEmpty() || reason.isEmpty() || second.isEmpty() || clinician.equals(second)) {
                throw new IllegalArgumentException("An override names a clinician, a reason and a second person");
            }
        }
    }

    /** None; the ordinary case. */
    static Exemption none() {
        return new None();
    }

    /**
     * Of what was entered; withheld unless clinician, reason and a second, different person are there.
     *
     * @param asked the check it is for
     */
    static Outcome<Exemption> signed(
            Optional<String> clinician, Optional<String> reason, Optional<String> second, Evidence asked) {
        People people = new People(clinician, second);
        Optional<String> said = reason.map(String::strip).filter(each -> !each.isEmpty());
        if (!people.areTwo() || said.isEmpty()) {
            return Outcome.withheld(Finding.of(FindingCode.CHECK_OVERRIDE_REFUSED, asked));
        }
        return Outcome.ready(new Signed(
                people.reader().orElseThrow(), said.get(), people.second().orElseThrow()));
    }
}
