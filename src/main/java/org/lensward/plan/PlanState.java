package org.lensward.plan;

import java.util.Locale;

/** How far a plan can be relied on; even a ready plan awaits a surgeon's confirmation. */
public enum PlanState {
    /** Complete. */
    READY,
    /** Complete under the conditions it names. */
    PROVISIONAL,
    /** No lens is proposed; every reason is named with its remedy. */
    WITHHELD;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
