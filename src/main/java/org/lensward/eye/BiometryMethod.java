package org.lensward.eye;

/** How an axial length was measured. Lens constants hold for one method only. */
public enum BiometryMethod {
    OPTICAL("light"),
    IMMERSION_ULTRASOUND("immersion ultrasound"),
    CONTACT_ULTRASOUND("contact ultrasound");

    private final String spoken;

    BiometryMethod(String spoken) {
        this.spoken = spoken;
    }

    /** As a sentence says it: "measured by ...". */
    @Override
    public String toString() {
        return spoken;
    }
}
