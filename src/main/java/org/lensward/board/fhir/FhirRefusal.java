package org.lensward.board.fhir;

import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.springframework.http.HttpStatus;

/** A request that is not answered with what it asks for: the HTTP status, and why as FHIR says it. */
final class FhirRefusal extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final HttpStatus status;
    private final IssueType type;

    FhirRefusal(HttpStatus status, IssueType type, String why) {
        super(why);
        this.status = status;
        this.type = type;
    }

    HttpStatus status() {
        return status;
    }

    OperationOutcome outcome() {
        OperationOutcome outcome = new OperationOutcome();
        outcome.addIssue().setSeverity(IssueSeverity.ERROR).setCode(type).setDiagnostics(getMessage());
        return outcome;
    }
}
