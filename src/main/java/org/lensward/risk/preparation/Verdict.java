package org.lensward.risk.preparation;

import java.util.Locale;

/** Whether something suits this eye. */
public enum Verdict {
    SUITS,
    /** Nothing forbids it, something speaks against it. */
    DOUBTFUL,
    DOES_NOT_SUIT,
    /** A fact that could forbid it is not recorded. */
    UNKNOWN;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
