package org.lensward.record.hl7;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.record.Systems;

/**
 * A coded element (CE, CWE).
 *
 * @param code identifier
 * @param text words
 * @param system coding system as HL7 table 0396 names it
 * @param otherCode alternate identifier
 * @param otherSystem its coding system
 */
record Coded(String code, String text, String system, Optional<String> otherCode, String otherSystem) {

    /** HL7 table 0396, those we use, and our own under 99LENSWARD. */
    private static final Map<String, String> TABLE_0396 = Map.of(
            "LN",
            Systems.LOINC,
            "SCT",
            Systems.SNOMED,
            "DCM",
            Systems.DICOM,
            "UCUM",
            Systems.UCUM,
            "99LENSWARD",
            Systems.MEASUREMENT,
            Systems.MEASUREMENT,
            Systems.MEASUREMENT,
            Systems.BIOMETRY_METHOD,
            Systems.BIOMETRY_METHOD);

    boolean isEmpty() {
        return code.isEmpty() && text.isEmpty() && otherCode.isEmpty();
    }

    /** Both codings as they came; a system we do not know is left off, not guessed. */
    CodeableConcept concept() {
        CodeableConcept concept = new CodeableConcept();
        codings().forEach(concept::addCoding);
        if (!text.isEmpty()) {
            concept.setText(text);
        }
        return concept;
    }

    private List<Coding> codings() {
        List<Coding> codings = new ArrayList<>();
        if (!code.isEmpty()) {
            codings.add(coding(code, system));
        }
        otherCode.ifPresent(other -> codings.add(coding(other, otherSystem)));
        return codings;
    }

    private static Coding coding(String code, String system) {
        return new Coding().setSystem(TABLE_0396.get(system)).setCode(code);
    }

    /** The code in that FHIR system, where either coding has one. */
    Optional<String> in(String fhirSystem) {
        return codings().stream()
                .filter(each -> fhirSystem.equals(each.getSystem()))
                .map(Coding::getCode)
                .findFirst();
    }
}
