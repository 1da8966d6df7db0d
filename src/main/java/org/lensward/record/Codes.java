package org.lensward.record;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;

/** Small questions about codings, asked everywhere. */
public final class Codes {

    private Codes() {}

    /** Whether the concept has that code. */
    public static boolean has(CodeableConcept concept, String system, String code) {
        return concept.getCoding().stream()
                .anyMatch(coding -> system.equals(coding.getSystem()) && code.equals(coding.getCode()));
    }

    /** The concept's code in that system. */
    public static Optional<String> in(CodeableConcept concept, String system) {
        return concept.getCoding().stream()
                .filter(coding -> system.equals(coding.getSystem()) && coding.hasCode())
                .map(Coding::getCode)
                .findFirst();
    }

    static Optional<String> in(List<CodeableConcept> concepts, String system) {
        return concepts.stream()
                .flatMap(concept -> in(concept, system).stream())
                .findFirst();
    }

    /** A concept with one coding. */
    public static CodeableConcept concept(String system, String code, String display) {
        return new CodeableConcept(new Coding(system, code, display));
    }

    /** What a person would call it: the text, else a display, else the bare code. */
    public static String words(CodeableConcept concept) {
        if (concept.hasText()) {
            return concept.getText();
        }
        return concept.getCoding().stream()
                .filter(Coding::hasDisplay)
                .map(Coding::getDisplay)
                .findFirst()
                .or(() -> concept.getCoding().stream().map(Coding::getCode).findFirst())
                .orElse("unnamed");
    }
}
