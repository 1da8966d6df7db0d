package org.lensward.plan.order;

/** Whereabouts on a list an eye belongs, first to last. Common practice, no source. */
public enum Place {
    /** Its pressure is raised, or the room must be free of something it does not tolerate. */
    FIRST,
    /** It is difficult: the team is fresh, and there is time. */
    EARLY,
    /** Nothing asks for a place. */
    ANYWHERE,
    /** It may leave bacteria behind. */
    LAST,
    /** It has no lens planned, so it cannot be operated on yet. */
    NOT_YET
}
