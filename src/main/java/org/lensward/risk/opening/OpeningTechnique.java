package org.lensward.risk.opening;

import org.lensward.finding.Coded;

/** How the anterior capsule is opened. */
public enum OpeningTechnique implements Coded {
    /** A continuous opening torn with needle or forceps. */
    TORN_BY_HAND("an opening torn by hand"),
    /** A femtosecond laser docked to the eye before any incision. */
    PHOTODISRUPTION("an opening by photodisruption"),
    /** A laser under the microscope whose light a dye in the capsule absorbs; the edge is coagulated. */
    DYE_LASER_COAGULATION("an opening by dye-absorbing laser"),
    /** A heated or electric ring set down on the capsule. */
    THERMAL("a thermal opening");

    private final String words;

    OpeningTechnique(String words) {
        this.words = words;
    }

    /** As a sentence says it. */
    @Override
    public String toString() {
        return words;
    }
}
