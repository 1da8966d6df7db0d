package org.lensward.board.eye;

import java.util.List;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.record.Patients;

/**
 * Whose eye it is. On the page alone: never in an address, a title or a log.
 *
 * @param name as the record has it
 * @param born date of birth
 * @param numbers identifiers, each with what it is called
 */
record Whose(String name, String born, List<Number> numbers) {

    /**
     * One identifier.
     *
     * @param name what it is called
     * @param system that gave it
     * @param value as it is written
     */
    record Number(String name, String system, String value) {

        @Override
        public String toString() {
            return "Number";
        }
    }

    static Whose of(Patient patient) {
        return new Whose(
                Patients.name(patient),
                patient.hasBirthDate() ? patient.getBirthDateElement().getValueAsString() : "not recorded",
                patient.getIdentifier().stream()
                        .filter(Identifier::hasValue)
                        .map(each -> new Number(
                                Patients.numberName(each), each.hasSystem() ? each.getSystem() : "", each.getValue()))
                        .toList());
    }

    @Override
    public String toString() {
        return "Whose";
    }
}
