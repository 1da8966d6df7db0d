package org.lensward.lens;

import java.util.Locale;

/** What a lens of the kit is for. */
public enum KitRole {
    /** The lens to implant. */
    PRIMARY,
    /** Its identical twin, should the first be dropped or damaged. */
    SPARE,
    /** A lens for the ciliary sulcus, should the capsule tear. */
    SULCUS,
    /** A lens for the anterior chamber, should no capsule be left. */
    ANTERIOR_CHAMBER;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
