package org.lensward.risk.preparation;

import java.util.Locale;
import org.lensward.finding.Coded;

/** Kinds of lens a patient may be offered. A toric lens may also share out the light; then both kinds must suit. */
public enum LensType implements Coded {
    MONOFOCAL,
    EXTENDED_FOCUS,
    MULTIFOCAL,
    TORIC;

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
