package org.lensward.check;

import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/**
 * One thing that is not as expected. Its words may identify a patient; it prints none of them.
 *
 * @param code of what kind
 * @param what in words, such as {@code eye by the mark}
 * @param expected by the plan
 * @param presented by the people in the room; {@code not stated} where they said nothing
 */
public record Difference(FindingCode code, String what, String expected, String presented) {

    static final String NOT_STATED = "not stated";

    /** As a finding about that resource. */
    public Finding finding(Evidence evidence) {
        return Finding.of(code, evidence, what, expected, presented);
    }

    @Override
    public String toString() {
        return code.code();
    }
}
