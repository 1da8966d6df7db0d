package org.lensward.record.check;

import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.check.CheckState;
import org.lensward.check.Difference;
import org.lensward.finding.Finding;
import org.lensward.record.Systems;

/** What is to be done to the record about one action on a lens check, and what the people are told. */
public sealed interface CheckAnswer {

    /** Every reason why it does not go on as asked; none if it does. */
    List<Finding> findings();

    /**
     * One transaction to post. It may record a stop: see the findings.
     *
     * @param transaction guarded by the versions that were read; a conflict starts again from gathering
     * @param state where the check stands then
     * @param differences each with both values, where it stopped for them
     */
    record Write(Bundle transaction, CheckState state, List<Finding> findings, List<Difference> differences)
            implements CheckAnswer {
        public Write {
            findings = List.copyOf(findings);
            differences = List.copyOf(differences);
        }

        Write(Bundle transaction, CheckState state, List<Finding> findings) {
            this(transaction, state, findings, List.of());
        }

        /** The same, stopped for that. */
        Write because(List<Difference> why) {
            return new Write(transaction, state, findings, why);
        }
    }

    /**
     * It was done before: nothing to write.
     *
     * @param state where the check stands
     */
    record Unchanged(CheckState state) implements CheckAnswer {
        @Override
        public List<Finding> findings() {
            return List.of();
        }
    }

    /** Not now and not so: nothing to write. */
    record Refused(List<Finding> findings) implements CheckAnswer {
        public Refused {
            findings = List.copyOf(findings);
        }
    }

    /** The findings as FHIR says them; without any, that all is well. */
    default OperationOutcome outcome() {
        OperationOutcome outcome = new OperationOutcome();
        if (findings().isEmpty()) {
            outcome.addIssue()
                    .setSeverity(IssueSeverity.INFORMATION)
                    .setCode(IssueType.INFORMATIONAL)
                    .setDiagnostics("As planned.");
        }
        for (Finding each : findings()) {
            outcome.addIssue()
                    .setSeverity(IssueSeverity.ERROR)
                    .setCode(IssueType.BUSINESSRULE)
                    .setDiagnostics(each.message() + " " + each.remedy())
                    .addExpression(each.evidence().get(0).toString())
                    .getDetails()
                    .addCoding()
                    .setSystem(Systems.FINDING)
                    .setCode(each.code().code());
        }
        return outcome;
    }
}
