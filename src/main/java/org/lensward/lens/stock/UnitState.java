package org.lensward.lens.stock;

import java.util.Locale;

/** Where a carton stands between delivery and its end. */
public enum UnitState {
    /** On the shelf and free. */
    AVAILABLE,
    /** On the shelf, promised to one booking. */
    RESERVED,
    /** Taken to theatre for one booking. */
    PICKED,
    /** In an eye. */
    IMPLANTED,
    /** Opened, dropped or otherwise lost. */
    WASTED,
    /** Not to be used: recalled, damaged, expired or doubtful. */
    QUARANTINED;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
