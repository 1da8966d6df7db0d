package org.lensward.lens;

import org.lensward.finding.Coded;

/** What a lens of the kit is for. */
public enum KitRole implements Coded {
    /** The lens to implant. */
    PRIMARY,
    /** Its identical twin, should the first be dropped or damaged. */
    SPARE,
    /** A lens for the ciliary sulcus, should the capsule tear. */
    SULCUS,
    /** A lens for the anterior chamber, should no capsule be left. */
    ANTERIOR_CHAMBER;
}
