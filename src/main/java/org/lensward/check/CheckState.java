package org.lensward.check;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import org.lensward.finding.Coded;

/** Where a lens check stands. */
public enum CheckState implements Coded {
    /** A surgeon has yet to confirm the plan; no lens may be picked. */
    AWAITING_CONFIRMATION,
    /** Confirmed: the lens may be picked. */
    CONFIRMED,
    /** One matching carton is on its way to theatre. */
    PICKED,
    /** Verified before the anaesthetic. */
    SIGNED_IN,
    /** Verified before the incision. */
    TIMED_OUT,
    /** Verified: the seal may be broken. */
    CLEARED_TO_OPEN,
    /** What went in is what was planned. */
    COMPLETED,
    /** Something differed; only a surgeon's new choice goes on, in a new check. */
    FAILED,
    /** The surgeon did not confirm the plan. */
    REFUSED,
    /** Plan, eye, biometry or list changed; nothing verified here counts any more. */
    VOID;

    /** The one checkpoint that may come next. */
    public Optional<Checkpoint> next() {
        return switch (this) {
            case CONFIRMED -> Optional.of(Checkpoint.PICK);
            case PICKED -> Optional.of(Checkpoint.SIGN_IN);
            case SIGNED_IN -> Optional.of(Checkpoint.TIME_OUT);
            case TIMED_OUT -> Optional.of(Checkpoint.BEFORE_OPENING);
            case CLEARED_TO_OPEN -> Optional.of(Checkpoint.SIGN_OUT);
            case AWAITING_CONFIRMATION, COMPLETED, FAILED, REFUSED, VOID -> Optional.empty();
        };
    }

    /** The state of that code. */
    public static Optional<CheckState> of(String code) {
        return EnumSet.allOf(CheckState.class).stream()
                .filter(each -> each.code().equals(code))
                .findFirst();
    }

    /** As a sentence says it: {@code signed in}. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
