package org.lensward.record;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.AllergyIntolerance;
import org.hl7.fhir.r4.model.AllergyIntolerance.AllergyIntoleranceCriticality;
import org.hl7.fhir.r4.model.AllergyIntolerance.AllergyIntoleranceReactionComponent;
import org.hl7.fhir.r4.model.AllergyIntolerance.AllergyIntoleranceSeverity;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.finding.Evidence;

/** Reads what a patient does not tolerate. Refuted, erroneous and outlived entries say nothing. */
final class AllergyReader {

    private static final Set<String> NOT_SO = Set.of("refuted", "entered-in-error");
    private static final Set<String> OVER = Set.of("inactive", "resolved");
    static final String ANAPHYLAXIS = "39579001";

    private AllergyReader() {}

    static List<Allergy> read(Shelf shelf, Evidences evidences, Patient patient) {
        return standing(shelf, patient)
                .filter(each -> !AllergenCodes.deniesAll(each.getCode()))
                .map(each -> new Allergy(
                        substances(each), severe(each), Codes.words(each.getCode()), evidences.of(each, "code")))
                .sorted(Comparator.comparing(Allergy::evidence))
                .toList();
    }

    /** The entry that says that no allergy is known. */
    static Optional<Evidence> denial(Shelf shelf, Evidences evidences, Patient patient) {
        return standing(shelf, patient)
                .filter(each -> AllergenCodes.deniesAll(each.getCode()))
                .map(each -> evidences.of(each, "code"))
                .findFirst();
    }

    private static Stream<AllergyIntolerance> standing(Shelf shelf, Patient patient) {
        return shelf.all(AllergyIntolerance.class)
                .filter(each -> Shelf.refers(List.of(each.getPatient()), patient))
                .filter(each -> !NOT_SO.contains(status(each.getVerificationStatus())))
                .filter(each -> !OVER.contains(status(each.getClinicalStatus())));
    }

    private static String status(CodeableConcept status) {
        return status.getCodingFirstRep().hasCode() ? status.getCodingFirstRep().getCode() : "";
    }

    private static Set<Allergen> substances(AllergyIntolerance allergy) {
        Set<Allergen> found = EnumSet.noneOf(Allergen.class);
        found.addAll(AllergenCodes.of(allergy.getCode()));
        allergy.getReaction().forEach(reaction -> found.addAll(AllergenCodes.of(reaction.getSubstance())));
        return found;
    }

    private static boolean severe(AllergyIntolerance allergy) {
        return allergy.getCriticality() == AllergyIntoleranceCriticality.HIGH
                || allergy.getReaction().stream().anyMatch(AllergyReader::severe);
    }

    private static boolean severe(AllergyIntoleranceReactionComponent reaction) {
        return reaction.getSeverity() == AllergyIntoleranceSeverity.SEVERE
                || reaction.getManifestation().stream().anyMatch(each -> Codes.has(each, Systems.SNOMED, ANAPHYLAXIS));
    }
}
