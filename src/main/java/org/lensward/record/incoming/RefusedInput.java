package org.lensward.record.incoming;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.record.Systems;

/** A message or a file of which nothing may be stored. Names places, never a patient's data. */
public final class RefusedInput extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final FindingCode code;
    private final String place;

    /**
     * The refusal of one input.
     *
     * @param code why
     * @param place where: segment and field, or line and column
     * @param particulars what the code's message wants
     */
    public RefusedInput(FindingCode code, String place, Object... particulars) {
        super(Finding.of(code, new Evidence(place, "", ""), particulars).message());
        this.code = code;
        this.place = place;
    }

    public FindingCode code() {
        return code;
    }

    public String place() {
        return place;
    }

    /** The refusal as FHIR says it, with the remedy. */
    public OperationOutcome outcome() {
        OperationOutcome outcome = new OperationOutcome();
        outcome.addIssue()
                .setSeverity(IssueSeverity.ERROR)
                .setCode(IssueType.PROCESSING)
                .setDetails(new CodeableConcept(
                                new Coding().setSystem(Systems.FINDING).setCode(code.code()))
                        .setText(getMessage()))
                .setDiagnostics(place + ": " + getMessage() + " " + code.remedy());
        return outcome;
    }
}
