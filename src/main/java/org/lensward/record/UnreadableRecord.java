package org.lensward.record;

import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueSeverity;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;

/** Input that cannot be read at all: nothing is planned and nothing is written. Names the resource and the element. */
public final class UnreadableRecord extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final String element;
    private final IssueType type;

    /**
     * The refusal of one piece of input.
     *
     * @param type the kind of fault, in FHIR's words
     * @param element resource and element, such as {@code ServiceRequest/b1.subject}
     * @param message what is wrong and what to do, for a person
     */
    public UnreadableRecord(IssueType type, String element, String message) {
        super(message);
        this.type = type;
        this.element = element;
    }

    /** The kind of fault, in FHIR's words. */
    public IssueType type() {
        return type;
    }

    /** Where the fault is. */
    public String element() {
        return element;
    }

    /** The refusal as FHIR says it. */
    public OperationOutcome outcome() {
        OperationOutcome outcome = new OperationOutcome();
        outcome.addIssue()
                .setSeverity(IssueSeverity.ERROR)
                .setCode(type)
                .setDiagnostics(element + ": " + getMessage())
                .addExpression(element);
        return outcome;
    }
}
