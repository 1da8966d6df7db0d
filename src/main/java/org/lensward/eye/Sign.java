package org.lensward.eye;

import java.util.Locale;

/** What an examiner, a problem list or an operation note may say of an eye or its owner, as far as planning asks. */
public enum Sign {
    // of the eye
    GLAUCOMA,
    DIABETIC_RETINOPATHY,
    BROWN_OR_WHITE_LENS,
    SWOLLEN_LENS,
    FUNDUS_NOT_SEEN,
    PSEUDOEXFOLIATION,
    PHACODONESIS,
    LENS_DISLOCATION,
    KERATOCONUS,
    CORNEAL_GRAFT,
    CORNEA_RESHAPED,
    CORNEA_FLATTENED_BY_LASER,
    CORNEA_STEEPENED_BY_LASER,
    CORNEA_INCISED,
    SILICONE_OIL,
    SILICONE_OIL_STAYS,
    SILICONE_OIL_LEAVES,
    APHAKIA,
    PSEUDOPHAKIA,
    VITRECTOMY,
    // of the person
    CANNOT_LIE_FLAT,
    DOXAZOSIN,
    TAMSULOSIN,
    OTHER_ALPHA_BLOCKER;

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
