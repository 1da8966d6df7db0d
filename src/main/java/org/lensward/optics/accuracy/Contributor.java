package org.lensward.optics.accuracy;

/** What a predicted refraction can be wrong by. */
public enum Contributor {
    AXIAL_LENGTH("axial length"),
    CORNEAL_POWER("corneal power"),
    LENS_POSITION("lens position"),
    LENS_LABEL("lens power within its label"),
    REFRACTION("refraction after the operation");

    private final String spoken;

    Contributor(String spoken) {
        this.spoken = spoken;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return spoken;
    }
}
