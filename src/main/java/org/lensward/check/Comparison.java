package org.lensward.check;

/** What cannot be asked at every checkpoint; all else is asked at each. */
public enum Comparison {
    /** The eye by the mark on the skin. */
    MARK,
    /** Whether today is the day of the operation. */
    DAY,
    /** The lenses that stand by. */
    BACK_UPS
}
