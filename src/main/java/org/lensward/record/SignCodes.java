package org.lensward.record;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
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
            Map.entry("253225009", EnumSet.of(Sign.POSTERIOR_POLAR_CATARACT)),
            Map.entry("34361001", EnumSet.of(Sign.EYE_INJURY)),
            Map.entry("193839007", EnumSet.of(Sign.CORNEA_GUTTATA)),
            Map.entry("32022003", EnumSet.of(Sign.HIGH_MYOPIA)),
            Map.entry("128473001", EnumSet.of(Sign.UVEITIS)),
            Map.entry("367649002", EnumSet.of(Sign.EPIRETINAL_MEMBRANE)),
            Map.entry("267718000", EnumSet.of(Sign.MACULOPATHY)),
            Map.entry("28835009", EnumSet.of(Sign.RETINITIS_PIGMENTOSA)),
            // of the person
            Map.entry("73211009", EnumSet.of(Sign.DIABETES)),
            Map.entry("46635009", EnumSet.of(Sign.DIABETES)),
            Map.entry("44054006", EnumSet.of(Sign.DIABETES)),
            Map.entry("19346006", EnumSet.of(Sign.MARFAN_SYNDROME)),
            Map.entry("195967001", EnumSet.of(Sign.ASTHMA)),
            Map.entry("84114007", EnumSet.of(Sign.HEART_FAILURE)),
            Map.entry("709044004", EnumSet.of(Sign.KIDNEY_DISEASE)),
            // the lens that is there
            Map.entry("24010005", EnumSet.of(Sign.APHAKIA)),
            Map.entry("309523001", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("95217000", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("247095003", EnumSet.of(Sign.SILICONE_OIL)),
            Map.entry("232077005", EnumSet.of(Sign.VITRECTOMY)),
            // operations
            Map.entry("51683002", EnumSet.of(Sign.CORNEA_INCISED)),
            Map.entry("312965008", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("414582004", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("397516006", EnumSet.of(Sign.CORNEA_RESHAPED)),
            Map.entry("415089008", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("313999004", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("385468004", EnumSet.of(Sign.PSEUDOPHAKIA)),
            Map.entry("54885007", EnumSet.of(Sign.APHAKIA)));

    /** By the beginning of the ATC code: a substance, or a whole class of them. */
    private static final Map<String, Sign> ATC = Map.ofEntries(
            Map.entry("C02CA04", Sign.DOXAZOSIN),
            Map.entry("G04CA02", Sign.TAMSULOSIN),
            Map.entry("G04CA52", Sign.TAMSULOSIN),
            Map.entry("G04CA53", Sign.TAMSULOSIN),
            Map.entry("G04CA01", Sign.ALFUZOSIN),
            Map.entry("G04CA51", Sign.ALFUZOSIN),
            Map.entry("G04CA03", Sign.TERAZOSIN),
            Map.entry("G04CA04", Sign.OTHER_ALPHA_BLOCKER),
            Map.entry("B01AA", Sign.WARFARIN),
            Map.entry("B01AE", Sign.DIRECT_ANTICOAGULANT),
            Map.entry("B01AF", Sign.DIRECT_ANTICOAGULANT),
            Map.entry("B01AC", Sign.ANTIPLATELET_DRUG),
            Map.entry("A10", Sign.DIABETES));

    private static final Set<Sign> OF_THE_PERSON = EnumSet.range(Sign.CANNOT_LIE_FLAT, Sign.ANTIPLATELET_DRUG);

    /** A drug that is stopped thins the blood no longer; an alpha blocker's mark on the iris stays. */
    private static final Set<Sign> WHILE_TAKEN =
            EnumSet.of(Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT, Sign.ANTIPLATELET_DRUG);

    private SignCodes() {}

    /** Every sign that any coding of the concept stands for. */
    static Set<Sign> of(CodeableConcept concept) {
        Set<Sign> signs = EnumSet.noneOf(Sign.class);
        concept.getCoding().forEach(coding -> signs.addAll(of(coding)));
        return signs;
    }

    private static Set<Sign> of(Coding coding) {
        if (!coding.hasCode()) {
            return Set.of();
        }
        if (Systems.SNOMED.equals(coding.getSystem())) {
            return SNOMED.getOrDefault(coding.getCode(), Set.of());
        }
        if (Systems.ATC.equals(coding.getSystem())) {
            return ofDrug(coding.getCode());
        }
        return Systems.SIGN.equals(coding.getSystem()) ? ours(coding.getCode()) : Set.of();
    }

    private static Set<Sign> ofDrug(String code) {
        return ATC.entrySet().stream()
                .filter(each -> code.startsWith(each.getKey()))
                .map(Map.Entry::getValue)
                .collect(Collectors.toSet());
    }

    /** Whether a coding of the drug can be understood at all, so that no sign means no sign. */
    static boolean namesDrug(CodeableConcept drug) {
        return drug.getCoding().stream()
                .filter(Coding::hasCode)
                .anyMatch(coding ->
                        Systems.ATC.equals(coding.getSystem()) || !of(coding).isEmpty());
    }

    /** Whether the sign goes when the drug is stopped. */
    static boolean onlyWhileTaken(Sign sign) {
        return WHILE_TAKEN.contains(sign);
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
