package org.lensward.flow;

/** The record would not, or not yet, do what was asked; asking again may help. Says nothing about a patient. */
public final class RecordRefusal extends RuntimeException {

    private static final long serialVersionUID = 1;

    /** Nothing was asked: the record wants to be left alone. */
    static final String TO_WAIT = "record-asked-to-wait";

    private final String reason;

    RecordRefusal(String reason, String message) {
        super(message);
        this.reason = reason;
    }

    /** The code by which operators look it up, such as {@code page-vanished}. */
    public String reason() {
        return reason;
    }

    static RecordRefusal dryRun() {
        return new RecordRefusal("dry-run", "Dry run: nothing is written to the record");
    }
}
