package org.lensward.risk;

import static org.lensward.finding.FindingCode.ALLERGY;
import static org.lensward.finding.FindingCode.CAPSULE_RUPTURE_LIKELIER;
import static org.lensward.finding.FindingCode.FUNDUS_NOT_SEEN;
import static org.lensward.finding.FindingCode.IRIS_MAY_BE_FLOPPY;
import static org.lensward.finding.FindingCode.LENS_WHITE_OR_BROWN;
import static org.lensward.finding.FindingCode.RISK_FACTORS_UNKNOWN;
import static org.lensward.finding.FindingCode.ZONULES_WEAK;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.Allergy;
import org.lensward.eye.Eye;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Person;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** What the record shows of this eye that the team names and prepares for. */
public final class EyeRisks {

    private final RiskPolicy policy;

    public EyeRisks(RiskPolicy policy) {
        this.policy = policy;
    }

    /**
     * Every risk found, in a fixed order.
     *
     * @param person whose eye it is
     * @param eye the eye to be operated on
     * @param rupture its capsule-rupture risk
     */
    public List<Finding> name(Person person, Eye eye, RuptureRisk rupture) {
        List<Finding> found = new ArrayList<>();
        rupture(person, rupture, found);
        allergies(person, found);
        signs(eye, FUNDUS_NOT_SEEN, found, Sign.FUNDUS_NOT_SEEN);
        signs(eye, LENS_WHITE_OR_BROWN, found, Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS);
        signs(
                eye,
                ZONULES_WEAK,
                found,
                Sign.PHACODONESIS,
                Sign.LENS_DISLOCATION,
                Sign.PSEUDOEXFOLIATION,
                Sign.VITRECTOMY);
        signs(eye, IRIS_MAY_BE_FLOPPY, found, Sign.TAMSULOSIN, Sign.DOXAZOSIN, Sign.OTHER_ALPHA_BLOCKER);
        return found;
    }

    private void rupture(Person person, RuptureRisk rupture, List<Finding> found) {
        if (rupture.oddsRatio().compareTo(policy.ruptureNotable().value()) >= 0) {
            String chief =
                    rupture.factors().stream().limit(3).map(RiskFactor::words).collect(Collectors.joining(", "));
            found.add(Finding.of(
                    CAPSULE_RUPTURE_LIKELIER,
                    rupture.factors().stream()
                            .map(RiskFactor::evidence)
                            .distinct()
                            .toList(),
                    rupture.oddsRatio().value(),
                    chief));
        }
        if (!rupture.unknown().isEmpty()) {
            found.add(Finding.of(RISK_FACTORS_UNKNOWN, person.evidence(), String.join(", ", rupture.unknown())));
        }
    }

    private static void allergies(Person person, List<Finding> found) {
        if (!person.allergies().isEmpty()) {
            List<Evidence> evidence =
                    person.allergies().stream().map(Allergy::evidence).toList();
            String words = person.allergies().stream().map(Allergy::words).collect(Collectors.joining(", "));
            found.add(Finding.of(ALLERGY, evidence, words));
        }
    }

    private static void signs(Eye eye, FindingCode code, List<Finding> found, Sign... signs) {
        List<Entry> present = Stream.of(signs)
                .flatMap(sign -> eye.history().affirmed(sign).stream())
                .toList();
        if (!present.isEmpty()) {
            String words = present.stream().map(Entry::words).distinct().collect(Collectors.joining(", "));
            found.add(Finding.of(
                    code, present.stream().map(Entry::evidence).distinct().toList(), words));
        }
    }
}
