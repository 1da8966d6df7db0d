package org.lensward.record.incoming;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.junit.jupiter.api.Test;
import org.lensward.finding.FindingCode;

/** Common practice, no source: two identifiers and the day of birth must not contradict one another. */
class WhomTest {

    private static final Optional<LocalDate> BORN = Optional.of(LocalDate.of(1952, 11, 4));

    private static Identifier identifier(String system, String value) {
        return new Identifier().setSystem("https://hospital.example/" + system).setValue(value);
    }

    private static Patient patient(String id, Identifier... identifiers) {
        Patient patient = new Patient();
        patient.setId(id);
        patient.setBirthDateElement(new DateType("1952-11-04"));
        List.of(identifiers).forEach(patient::addIdentifier);
        return patient;
    }

    private static FindingCode refusal(Whom whom, Patient... found) {
        return catchThrowableOfType(RefusedInput.class, () -> whom.among(List.of(found)))
                .code();
    }

    private static Whom whom(Optional<LocalDate> born, Identifier... identifiers) {
        return new Whom("PID-3", List.of(identifiers), born);
    }

    @Test
    void one_patient_with_the_identifier_is_found() {
        Patient other = patient("p2", identifier("mrn", "2"));
        assertThat(whom(BORN, identifier("mrn", "1"))
                        .among(List.of(other, patient("p1", identifier("mrn", "1"))))
                        .getId())
                .isEqualTo("p1");
    }

    @Test
    void nobody_and_two_are_refused() {
        Whom whom = whom(BORN, identifier("mrn", "1"), identifier("nation", "9"));
        assertThat(refusal(whom)).isEqualTo(FindingCode.PATIENT_NOT_IN_RECORD);
        assertThat(refusal(whom, patient("p1", identifier("mrn", "2")))).isEqualTo(FindingCode.PATIENT_NOT_IN_RECORD);
        assertThat(refusal(whom, patient("p1", identifier("mrn", "1")), patient("p2", identifier("nation", "9"))))
                .isEqualTo(FindingCode.PATIENT_AMBIGUOUS);
        // The same number in another letter case is another number.
        assertThat(refusal(whom(BORN, identifier("mrn", "a1")), patient("p1", identifier("mrn", "A1"))))
                .isEqualTo(FindingCode.PATIENT_NOT_IN_RECORD);
    }

    @Test
    void a_contradiction_is_refused() {
        Whom whom = whom(BORN, identifier("mrn", "1"), identifier("nation", "9"));
        Patient patient = patient("p1", identifier("mrn", "1"), identifier("nation", "8"));
        assertThat(refusal(whom, patient)).isEqualTo(FindingCode.PATIENT_CONTRADICTED);
        assertThat(refusal(
                        whom(Optional.of(LocalDate.of(1952, 4, 11)), identifier("mrn", "1")),
                        patient("p1", identifier("mrn", "1"))))
                .isEqualTo(FindingCode.PATIENT_CONTRADICTED);
        assertThat(refusal(
                        whom(BORN, identifier("mrn", "1")),
                        patient("p1", identifier("mrn", "1")).setActive(false)))
                .isEqualTo(FindingCode.PATIENT_CONTRADICTED);
    }

    /** FHIR R4, 3.1.1.3 Search: separators inside a value are escaped. */
    @Test
    void an_identifier_cannot_widen_the_search() {
        assertThat(whom(BORN, identifier("mrn", "1,2|3&_count=9")).questions())
                .singleElement()
                .asString()
                .startsWith("Patient?identifier=")
                .contains("%5C%2C")
                .contains("%5C%7C")
                .doesNotContain("&_count=9");
    }
}
