package org.lensward.record.incoming;

import ca.uhn.fhir.rest.param.ParameterUtil;
import ca.uhn.fhir.util.UrlUtil;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.finding.FindingCode;

/**
 * Whose it is, as it was sent: the identifiers that the site can place, and the day of birth where it was sent. Never printed.
 *
 * @param place where it was said, for a message
 * @param identifiers with system and value; at least one
 * @param born day of birth
 */
public record Whom(String place, List<Identifier> identifiers, Optional<LocalDate> born) {

    public Whom {
        identifiers = List.copyOf(identifiers);
        if (identifiers.isEmpty()) {
            throw new IllegalArgumentException("Someone is named by an identifier: " + place);
        }
    }

    /** What to ask the record for to find everyone it may be. */
    public List<String> questions() {
        return identifiers.stream()
                .map(each -> "Patient?identifier=" + UrlUtil.escapeUrlParam(token(each)) + "&_count=10")
                .toList();
    }

    private static String token(Identifier identifier) {
        return ParameterUtil.escape(identifier.getSystem()) + "|" + ParameterUtil.escape(identifier.getValue());
    }

    /** The one patient it is; two, none, or one that anything sent contradicts is refused. */
    public Patient among(List<Patient> found) {
        List<Patient> named = found.stream().filter(this::names).toList();
        if (named.isEmpty()) {
            throw new RefusedInput(FindingCode.PATIENT_NOT_IN_RECORD, place, place);
        }
        if (named.size() > 1) {
            throw new RefusedInput(FindingCode.PATIENT_AMBIGUOUS, place, place, named.size());
        }
        Patient patient = named.get(0);
        if (contradicted(patient)) {
            throw new RefusedInput(FindingCode.PATIENT_CONTRADICTED, place, place);
        }
        return patient;
    }

    private boolean names(Patient patient) {
        return identifiers.stream().anyMatch(each -> has(patient, each));
    }

    private static boolean has(Patient patient, Identifier sent) {
        return patient.getIdentifier().stream()
                .anyMatch(each -> sameSystem(each, sent) && sent.getValue().equals(each.getValue()));
    }

    private static boolean sameSystem(Identifier one, Identifier other) {
        return other.getSystem().equals(one.getSystem());
    }

    private boolean contradicted(Patient patient) {
        boolean otherDay = born.isPresent()
                && patient.hasBirthDate()
                && !born.get().toString().equals(patient.getBirthDateElement().getValueAsString());
        boolean otherNumber = identifiers.stream()
                .filter(sent -> patient.getIdentifier().stream().anyMatch(each -> sameSystem(each, sent)))
                .anyMatch(sent -> !has(patient, sent));
        return otherDay || otherNumber || (patient.hasActive() && !patient.getActive());
    }

    @Override
    public String toString() {
        return "the patient at " + place;
    }
}
