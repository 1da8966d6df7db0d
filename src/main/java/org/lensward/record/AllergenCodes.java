package org.lensward.record;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.eye.Allergen;

/** Which substances of the theatre an allergy's code forbids. */
final class AllergenCodes {

    /** The allergy as a finding, or the substance alone. */
    private static final Map<String, Allergen> SNOMED = Map.ofEntries(
            Map.entry("91936005", Allergen.PENICILLIN),
            Map.entry("764146007", Allergen.PENICILLIN),
            Map.entry("373270004", Allergen.PENICILLIN),
            Map.entry("294532003", Allergen.CEPHALOSPORIN),
            Map.entry("91939003", Allergen.SULPHONAMIDE),
            Map.entry("387406002", Allergen.SULPHONAMIDE),
            Map.entry("387458008", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("387207008", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("1003755004", Allergen.LATEX),
            Map.entry("111088007", Allergen.LATEX));

    /** By the beginning of the ATC code. */
    private static final Map<String, Allergen> ATC = Map.ofEntries(
            Map.entry("J01C", Allergen.PENICILLIN),
            Map.entry("J01DB", Allergen.CEPHALOSPORIN),
            Map.entry("J01DC", Allergen.CEPHALOSPORIN),
            Map.entry("J01DD", Allergen.CEPHALOSPORIN),
            Map.entry("J01DE", Allergen.CEPHALOSPORIN),
            Map.entry("J01MA", Allergen.FLUOROQUINOLONE),
            Map.entry("S01AE", Allergen.FLUOROQUINOLONE),
            Map.entry("J01G", Allergen.AMINOGLYCOSIDE),
            Map.entry("J01XA01", Allergen.VANCOMYCIN),
            Map.entry("J01E", Allergen.SULPHONAMIDE),
            Map.entry("S01EC01", Allergen.SULPHONAMIDE),
            Map.entry("D08AG", Allergen.IODINE),
            Map.entry("D08AC02", Allergen.CHLORHEXIDINE),
            Map.entry("M01A", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("S01BC", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("N02BA01", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("B01AC06", Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
            Map.entry("H02AB", Allergen.CORTICOSTEROID),
            Map.entry("S01BA", Allergen.CORTICOSTEROID),
            Map.entry("N01BB", Allergen.AMIDE_ANAESTHETIC),
            Map.entry("N01BA", Allergen.ESTER_ANAESTHETIC),
            Map.entry("S01HA", Allergen.ESTER_ANAESTHETIC),
            Map.entry("B06AA03", Allergen.HYALURONIDASE),
            Map.entry("S01FB01", Allergen.PHENYLEPHRINE),
            Map.entry("C01CA24", Allergen.ADRENALINE));

    /** No known allergy. */
    private static final String NONE_KNOWN = "716186003";

    private AllergenCodes() {}

    /** Every substance that any coding of the concept stands for; none where nothing is understood. */
    static Set<Allergen> of(CodeableConcept concept) {
        Set<Allergen> found = EnumSet.noneOf(Allergen.class);
        for (Coding coding : concept.getCoding()) {
            String code = coding.hasCode() ? coding.getCode() : "";
            if (Systems.SNOMED.equals(coding.getSystem()) && SNOMED.containsKey(code)) {
                found.add(SNOMED.get(code));
            } else if (Systems.ATC.equals(coding.getSystem())) {
                ATC.entrySet().stream()
                        .filter(each -> code.startsWith(each.getKey()))
                        .forEach(each -> found.add(each.getValue()));
            } else if (Systems.ALLERGEN.equals(coding.getSystem())) {
                EnumSet.allOf(Allergen.class).stream()
                        .filter(each -> code(each).equals(code))
                        .forEach(found::add);
            }
        }
        return found;
    }

    /** The substance's code in our CodeSystem. */
    static String code(Allergen allergen) {
        return allergen.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether the entry says that no allergy is known, which is no allergy. */
    static boolean deniesAll(CodeableConcept concept) {
        return Codes.has(concept, Systems.SNOMED, NONE_KNOWN);
    }
}
