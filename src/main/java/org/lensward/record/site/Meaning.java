package org.lensward.record.site;

import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Coding;
import org.lensward.record.Systems;
import org.lensward.record.Vocabulary;
import org.lensward.record.Vocabulary.Place;

/**
 * What a local code stands for: a code of ours or of a standard that Lensward understands.
 *
 * @param system its code system
 * @param code the code
 * @param words what Lensward takes it for
 */
public record Meaning(String system, String code, String words) implements Comparable<Meaning> {

    private static final Map<String, String> STANDARDS =
            Map.of("loinc", Systems.LOINC, "snomed", Systems.SNOMED, "dicom", Systems.DICOM, "atc", Systems.ATC);

    /**
     * Reads {@code measurement|axial-length}, {@code snomed|415089008} or a whole {@code system|code}.
     *
     * @throws IllegalArgumentException where Lensward understands no such code
     */
    public static Meaning parse(String text) {
        LocalCode named = LocalCode.parse(text);
        String system = named.system().contains(":")
                ? named.system()
                : STANDARDS.getOrDefault(named.system(), Systems.BASE + "/CodeSystem/" + named.system());
        Coding coding = new Coding().setSystem(system).setCode(named.code());
        return Optional.of(coding)
                .flatMap(each -> Vocabulary.meaning(each).or(() -> Vocabulary.meaning(Place.DRUG, each)))
                .map(words -> new Meaning(system, named.code(), words))
                .orElseThrow(() -> new IllegalArgumentException("'" + text + "' is no code that Lensward understands"));
    }

    Coding coding() {
        return new Coding().setSystem(system).setCode(code).setDisplay(words);
    }

    @Override
    public int compareTo(Meaning other) {
        return (system + code).compareTo(other.system + other.code);
    }

    @Override
    public String toString() {
        return words;
    }
}
