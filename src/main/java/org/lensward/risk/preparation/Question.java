package org.lensward.risk.preparation;

import org.lensward.eye.Sign;

/** How a fact that the record is silent about is found out. */
final class Question {

    private Question() {}

    static String about(Sign sign) {
        return switch (sign) {
            case MACULOPATHY, EPIRETINAL_MEMBRANE, RETINAL_VEIN_OCCLUSION -> sign + " (OCT of the macula)";
            case DIABETIC_RETINOPATHY, RETINITIS_PIGMENTOSA, STAPHYLOMA -> sign + " (look at the fundus, or B-scan)";
            case FUNDUS_NOT_SEEN -> "whether the fundus can be seen";
            case VISUAL_FIELD_LOSS -> sign + " (visual field)";
            case CORNEA_IRREGULAR, KERATOCONUS -> sign + " (corneal topography)";
            case CORNEA_GUTTATA -> sign + " (slit lamp or specular microscopy)";
            case PHACODONESIS, LENS_DISLOCATION, PSEUDOEXFOLIATION -> sign + " (slit lamp, dilated)";
            case BROWN_OR_WHITE_LENS, SWOLLEN_LENS -> sign + " (slit lamp; lens thickness by ultrasound)";
            case CANNOT_FIXATE -> "whether the patient can fixate";
            case CANNOT_COOPERATE -> "whether the patient can cooperate";
            case CANNOT_LIE_FLAT -> "whether the patient can lie flat";
            case DRIVES_AT_NIGHT -> "whether the patient drives at night";
            case TAMSULOSIN, DOXAZOSIN, ALFUZOSIN, TERAZOSIN -> "whether the patient ever took " + sign;
            case OTHER_ALPHA_BLOCKER -> "whether the patient ever took another alpha blocker";
            case WARFARIN -> "whether the patient takes warfarin";
            case DIRECT_ANTICOAGULANT -> "whether the patient takes a direct anticoagulant";
            case ANTIPLATELET_DRUG -> "whether the patient takes an antiplatelet drug";
            case RESISTANT_BACTERIA -> "whether resistant bacteria were ever found";
            default -> sign.toString();
        };
    }
}
