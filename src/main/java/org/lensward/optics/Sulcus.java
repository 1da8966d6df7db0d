package org.lensward.optics;

import org.lensward.quantity.Millimetres;

/** The ciliary sulcus, where a three-piece lens lies when the capsule does not hold it. */
public final class Sulcus {

    /**
     * How far a lens lies in front of its place in the capsular bag: 0.5 mm, the step of the table that takes 25.00 D in the bag to
     * 23.84 D in the sulcus (5.20 to 4.70 mm, K 43 D; secondary source).
     */
    public static final Millimetres FORWARD = Millimetres.of(0.5);

    private Sulcus() {}

    /** The eye with its lens in the sulcus. */
    public static ThinEye of(ThinEye bag) {
        return bag.withLensMoved(Millimetres.of(-FORWARD.value()));
    }
}
