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
    POSTERIOR_POLAR_CATARACT,
    EYE_INJURY,
    HIGH_MYOPIA,
    STAPHYLOMA,
    CANNOT_FIXATE,
    UVEITIS,
    EPIRETINAL_MEMBRANE,
    RETINAL_VEIN_OCCLUSION,
    MACULOPATHY,
    VISUAL_FIELD_LOSS,
    RETINITIS_PIGMENTOSA,
    CORNEA_GUTTATA,
    CORNEA_IRREGULAR,
    LID_INFECTION,
    PRESSURE_SPIKE_BEFORE,
    // of the person
    CANNOT_LIE_FLAT,
    CANNOT_COOPERATE,
    DRIVES_AT_NIGHT,
    DIABETES,
    MARFAN_SYNDROME,
    ASTHMA,
    HEART_FAILURE,
    KIDNEY_DISEASE,
    RESISTANT_BACTERIA,
    DOXAZOSIN,
    TAMSULOSIN,
    ALFUZOSIN,
    TERAZOSIN,
    OTHER_ALPHA_BLOCKER,
    WARFARIN,
    DIRECT_ANTICOAGULANT,
    ANTIPLATELET_DRUG;

    /** As a sentence says it. */
    @Override
    public String toString() {
        return this == MARFAN_SYNDROME
                ? "Marfan syndrome"
                : name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
