package org.lensward.optics;

/** How refractive surgery changed a cornea. */
public enum Reshaping {
    /** Flattened in its middle by laser, for myopia. */
    FLATTENED_BY_LASER("by laser for myopia"),
    /** Steepened in its middle by laser, for hyperopia. */
    STEEPENED_BY_LASER("by laser for hyperopia"),
    /** Cut, not ablated, as by radial keratotomy. */
    INCISED("by incisions"),
    /** The record does not say. */
    UNKNOWN("in a way not recorded");

    private final String spoken;

    Reshaping(String spoken) {
        this.spoken = spoken;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return spoken;
    }
}
