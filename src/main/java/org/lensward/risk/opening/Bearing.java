package org.lensward.risk.opening;

import org.lensward.finding.Coded;

/** How a reason bears on a technique, weakest first. */
public enum Bearing implements Coded {
    /** It speaks for the technique. */
    FAVOURS,
    /** It asks for something before or while the technique is used. */
    ASKS,
    /** It would forbid the technique if it were so, and the record does not say. */
    LEAVES_OPEN,
    /** It speaks so strongly against the technique that it is not planned. */
    FORBIDS,
    /** The hospital does not have the technique. */
    NOT_AT_HAND;
}
