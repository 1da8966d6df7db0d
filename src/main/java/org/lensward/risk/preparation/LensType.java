package org.lensward.risk.preparation;

import java.util.Locale;

/** Kinds of lens a patient may be offered. A toric lens may also share out the light; then both kinds must suit. */
public enum LensType {
    MONOFOCAL,
    EXTENDED_FOCUS,
    MULTIFOCAL,
    TORIC;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
