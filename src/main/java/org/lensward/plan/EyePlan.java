package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Person;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.risk.RuptureRisk;

/**
 * What to do for one eye. Decision support: it awaits a surgeon's confirmation.
 *
 * @param booking the operation it is for
 * @param person the patient
 * @param state ready, provisional or withheld
 * @param lens the lenses; empty exactly when the plan is withheld
 * @param rupture the capsule-rupture risk, where the eye and the day are known
 * @param theatre what the theatre does and has at hand
 * @param findings everything that changed the plan, gravest first
 * @param basis every resource the plan rests on, in order
 * @param fingerprint the same for the same input under the same policy, and only then
 * @param policyVersion the policy it was made under
 */
public record EyePlan(
        Booking booking,
        Person person,
        PlanState state,
        Optional<LensPlan> lens,
        Optional<RuptureRisk> rupture,
        TheatrePlan theatre,
        List<Finding> findings,
        List<Evidence> basis,
        Fingerprint fingerprint,
        String policyVersion) {

    public EyePlan {
        findings = List.copyOf(findings);
        basis = List.copyOf(basis);
        if ((state == PlanState.WITHHELD) == lens.isPresent()) {
            throw new IllegalArgumentException("A plan proposes a lens exactly when it is not withheld");
        }
    }
}
