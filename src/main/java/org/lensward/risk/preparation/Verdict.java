package org.lensward.risk.preparation;

import org.lensward.finding.Coded;

/** Whether something suits this eye. */
public enum Verdict implements Coded {
    SUITS,
    /** Nothing forbids it, something speaks against it. */
    DOUBTFUL,
    DOES_NOT_SUIT,
    /** A fact that could forbid it is not recorded. */
    UNKNOWN;
}
