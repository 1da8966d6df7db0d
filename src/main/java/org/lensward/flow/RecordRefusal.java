package org.lensward.flow;

import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** The record would not, or not yet, do what was asked; asking again may help. Says nothing about a patient. */
public final class RecordRefusal extends RuntimeException {

    private static final long serialVersionUID = 1;

    RecordRefusal(String message) {
        super(message);
    }

    /**
     * A refusal that people can look up.
     *
     * @param code what was found
     * @param where the address it is about
     * @param particulars what the code's message wants
     */
    public RecordRefusal(FindingCode code, String where, Object... particulars) {
        super(code.code() + ": "
                + Finding.of(code, new Evidence(where, "", ""), particulars).message() + " " + code.remedy());
    }
}
