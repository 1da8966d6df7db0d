package org.lensward.lens;

import java.util.Locale;

/** Where in the eye a lens model is made to sit. */
public enum LensSite {
    CAPSULAR_BAG,
    SULCUS,
    ANTERIOR_CHAMBER;

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
