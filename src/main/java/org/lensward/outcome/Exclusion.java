package org.lensward.outcome;

import org.lensward.finding.Coded;

/** Why an operated eye does not count for the refractive audit. An eye is counted under the first that holds, in this order. */
public enum Exclusion implements Coded {
    DUPLICATE("the same operation told twice"),
    SITE_NOT_TOLD("where the lens was put is not told"),
    NOT_IN_THE_BAG("the lens is not in the capsular bag"),
    COMPLICATIONS_NOT_TOLD("how the operation went is not told"),
    COMPLICATED("a complicated eye"),
    NO_BIOMETRY("no biometry"),
    BIOMETRY_OF_THE_OTHER_EYE("the biometry is of the other eye"),
    BIOMETRY_AFTER_SURGERY("the biometry was taken after surgery"),
    NO_CONSTANTS("no lens constants for that model and biometry method"),
    NO_PREDICTION("no formula has a prediction"),
    NO_REFRACTION("no refraction"),
    REFRACTION_OF_THE_OTHER_EYE("refractions of the other eye only"),
    REFRACTION_BEFORE_SURGERY("refracted before surgery only"),
    REFRACTED_TOO_EARLY("refracted too early"),
    REFRACTED_TOO_LATE("refracted too late"),
    LENS_EXCHANGED("the lens was exchanged before the refraction"),
    OBJECTIVE_ONLY("an objective refraction only"),
    CYLINDER_NOT_TOLD("a sphere without its cylinder"),
    CYLINDER_FORM_NOT_TOLD("a cylinder of unknown sign"),
    VERTEX_NOT_TOLD("no vertex distance where it matters"),
    ACUITY_NOT_TOLD("no acuity beside the refraction"),
    ACUITY_TOO_POOR("an acuity too poor to refract by"),
    SECOND_EYE("the second eye of a patient who counts already");

    private final String words;

    Exclusion(String words) {
        this.words = words;
    }

    /** As a table says it. */
    @Override
    public String toString() {
        return words;
    }
}
