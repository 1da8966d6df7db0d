package org.lensward.check;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.lensward.finding.Coded;

/**
 * Where the lens is checked, in the order of the day. Each asks for everything, save what is not there to be seen: at the pick the patient
 * and the mark are still on the ward, at sign-out the package is open and the back-ups have gone. Sign-in, time-out and sign-out are those
 * of the WHO surgical safety checklist, 2009; the others are common practice, no source.
 */
public enum Checkpoint implements Coded {
    /** The carton is taken from the shelf. */
    PICK(EnumSet.of(Comparison.MARK, Comparison.DAY)),
    /** Before the anaesthetic. */
    SIGN_IN(EnumSet.noneOf(Comparison.class)),
    /** Before the first incision, read aloud. */
    TIME_OUT(EnumSet.noneOf(Comparison.class)),
    /** Before the seal is broken. */
    BEFORE_OPENING(EnumSet.noneOf(Comparison.class)),
    /** Before the patient leaves: what went in. */
    SIGN_OUT(EnumSet.of(Comparison.BACK_UPS));

    private final Set<Comparison> spared;

    Checkpoint(Set<Comparison> spared) {
        this.spared = spared;
    }

    /** Whether this comparison is made here. */
    public boolean asks(Comparison comparison) {
        return !spared.contains(comparison);
    }

    /** How the package must be found here. */
    public PackageState packageState() {
        return this == SIGN_OUT ? PackageState.OPENED : PackageState.INTACT;
    }

    /** The state of a check that passed here. */
    public CheckState reached() {
        return switch (this) {
            case PICK -> CheckState.PICKED;
            case SIGN_IN -> CheckState.SIGNED_IN;
            case TIME_OUT -> CheckState.TIMED_OUT;
            case BEFORE_OPENING -> CheckState.CLEARED_TO_OPEN;
            case SIGN_OUT -> CheckState.COMPLETED;
        };
    }

    /** The checkpoint of that code. */
    public static Optional<Checkpoint> of(String code) {
        return EnumSet.allOf(Checkpoint.class).stream()
                .filter(each -> each.code().equals(code))
                .findFirst();
    }
}
