package org.lensward.risk.opening;

import java.util.List;
import org.lensward.finding.Evidence;

/**
 * One reason for or against a technique.
 *
 * @param bearing how strongly and which way
 * @param words the reason, and what it asks for
 * @param evidence the facts of the record it rests on; empty where it rests on the record's silence or on the policy
 */
public record Reason(Bearing bearing, String words, List<Evidence> evidence) {

    public Reason {
        evidence = List.copyOf(evidence);
    }

    /** A reason that rests on no fact of the record. */
    static Reason of(Bearing bearing, String words) {
        return new Reason(bearing, words, List.of());
    }

    /** A reason that rests on this answer; its words follow in brackets. */
    static Reason of(Bearing bearing, String words, Answer answer) {
        return new Reason(bearing, words + " (" + answer.words() + ")", answer.evidence());
    }
}
