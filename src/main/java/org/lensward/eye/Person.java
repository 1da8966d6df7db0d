package org.lensward.eye;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;

/**
 * Whose eye it is, as far as planning asks. Prints nothing that identifies.
 *
 * @param evidence the patient resource
 * @param birthDate where it is recorded
 * @param sex as recorded for administration
 * @param allergies every allergy or intolerance that has not been refuted
 * @param noAllergy where the record says that none is known; an empty list alone says nothing
 */
public record Person(
        Evidence evidence,
        Optional<LocalDate> birthDate,
        Sex sex,
        List<Allergy> allergies,
        Optional<Evidence> noAllergy) {

    public Person {
        allergies = List.copyOf(allergies);
    }

    /** Someone of whom the record nowhere says that no allergy is known. */
    public Person(Evidence evidence, Optional<LocalDate> birthDate, Sex sex, List<Allergy> allergies) {
        this(evidence, birthDate, sex, allergies, Optional.empty());
    }

    /** The first allergy to that substance. */
    public Optional<Allergy> allergicTo(Allergen substance) {
        return allergies.stream().filter(each -> each.to().contains(substance)).findFirst();
    }

    @Override
    public String toString() {
        return evidence.resource();
    }
}
