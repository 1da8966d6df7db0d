package org.lensward.optics.length;

import org.lensward.quantity.PureNumber;

/** What a lens implant is made of, as far as sound is concerned. */
public enum LensMaterial {
    PMMA("PMMA", 0.44),
    SILICONE("silicone", -0.56),
    GLASS("glass", 0.75);

    private final String spoken;
    private final double share;

    LensMaterial(String spoken, double share) {
        this.spoken = spoken;
        this.share = share;
    }

    /**
     * What the implant adds to a reading at 1532 m/s, as a share of its thickness: 44 %, -56 % and 75 % (Hoffer, J Cataract Refract
     * Surg 1994;20:554, abstract). Acrylic is not in the abstract.
     */
    public PureNumber addedShare() {
        return PureNumber.of(share);
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return spoken;
    }
}
