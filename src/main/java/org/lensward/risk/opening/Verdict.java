package org.lensward.risk.opening;

import java.util.List;
import org.lensward.finding.Coded;

/** What all the reasons together say of one technique for one eye: what the strongest of them says. */
public enum Verdict implements Coded {
    SUITS,
    SUITS_WITH_CONDITIONS,
    /** The record does not say enough; unknown is not taken as absent. */
    UNKNOWN,
    DOES_NOT_SUIT,
    NOT_AVAILABLE;

    static Verdict of(List<Reason> reasons) {
        return reasons.stream()
                .map(Reason::bearing)
                .max(Bearing::compareTo)
                .map(Verdict::of)
                .orElse(SUITS);
    }

    private static Verdict of(Bearing strongest) {
        return switch (strongest) {
            case FAVOURS -> SUITS;
            case ASKS -> SUITS_WITH_CONDITIONS;
            case LEAVES_OPEN -> UNKNOWN;
            case FORBIDS -> DOES_NOT_SUIT;
            case NOT_AT_HAND -> NOT_AVAILABLE;
        };
    }

    /** Whether the technique may be planned as things are known. */
    public boolean suits() {
        return this == SUITS || this == SUITS_WITH_CONDITIONS;
    }
}
