package org.lensward.record;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.eye.Sign;

/** Which signs a diagnosis, an operation, a drug or an examiner's remark stands for. */
final class SignCodes {

    private static final Map<String, Set<Sign>> SNOMED = Map.ofEntries(
            Map.entry("23986001", EnumSet.of(Sign.GLAUCOMA)),
            Map.entry("111514006", EnumSet.of(Sign.GLAUCOMA, Sign.PSEUDOEXFOLIATION)),
            Map.entry("4855003", EnumSet.of(Sign.DIABETIC_RETINOPATHY)),
            Map.entry("849000", EnumSet.of(Sign.BROWN_OR_WHITE_LENS)),
            Map.entry("267626000", EnumSet.of(Sign.BROWN_OR_WHITE_LENS)),
            Map.entry("264443002", EnumSet.of(Sign.BROWN_OR_WHITE_LENS)),
            Map.entry("95724003", EnumSet.of(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS)),
            Map.entry("24010005", EnumSet.of(Sign.APHAKIA)),
            Map.entry("309523001", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("95217000", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("247095003", EnumSet.of(Sign.SILICONE_OIL)),
            Map.entry("232077005", EnumSet.of(Sign.VITRECTOMY)),
            // operations
            Map.entry("51683002", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("312965008", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("414582004", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("397516006", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("415089008", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("313999004", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("385468004", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("54885007", EnumSet.of(Sign.APHAKIA)));

    private static final Map<String, Set<Sign>> ATC = Map.of(
            "C02CA04", EnumSet.of(Sign.DOXAZOSIN),
            "G04CA02", EnumSet.of(Sign.TAMSULOSIN),
            "G04CA01", EnumSet.of(Sign.OTHER_ALPHA_BLOCKER),
            "G04CA03", EnumSet.of(Sign.OTHER_ALPHA_BLOCKER),
            "G04CA04", EnumSet.of(Sign.OTHER_ALPHA_BLOCKER));

    private static final Set<Sign> OF_THE_PERSON =
            EnumSet.of(Sign.CANNOT_LIE_FLAT, Sign.DOXAZOSIN, Sign.TAMSULOSIN, Sign.OTHER_ALPHA_BLOCKER);

    private SignCodes() {}

    /** Every sign that any coding of the concept stands for. */
    static Set<Sign> of(CodeableConcept concept) {
        Set<Sign> signs = EnumSet.noneOf(Sign.class);
        concept.getCoding().forEach(coding -> signs.addAll(of(coding)));
        return signs;
    }

    private static Set<Sign> of(Coding coding) {
        if (Systems.SNOMED.equals(coding.getSystem())) {
            return SNOMED.getOrDefault(coding.getCode(), Set.of());
        }
        if (Systems.ATC.equals(coding.getSystem())) {
            return ATC.getOrDefault(coding.getCode(), Set.of());
        }
        return Systems.SIGN.equals(coding.getSystem()) ? ours(coding.getCode()) : Set.of();
    }

    private static Set<Sign> ours(String code) {
        Set<Sign> signs = EnumSet.noneOf(Sign.class);
        for (Sign sign : Sign.values()) {
            if (code(sign).equals(code)) {
                signs.add(sign);
            }
        }
        return signs;
    }

    /** The sign's code in our CodeSystem. */
    static String code(Sign sign) {
        return sign.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether the sign belongs to the person, so that it needs no side. */
    static boolean ofThePerson(Sign sign) {
        return OF_THE_PERSON.contains(sign);
    }
}
