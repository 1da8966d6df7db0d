package org.lensward.check;

import static org.lensward.finding.FindingCode.CHECK_BIRTH_DATE_DIFFERS;
import static org.lensward.finding.FindingCode.CHECK_IDENTITY_INCOMPLETE;
import static org.lensward.finding.FindingCode.CHECK_PATIENT_DIFFERS;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The patient: two identifiers by system and value, none contradicted, and the date of birth. */
final class PatientComparison {

    /** The record itself does not tell this patient from others. */
    static final Difference INCOMPLETE = new Difference(
            CHECK_IDENTITY_INCOMPLETE, "patient", "two identifiers and a date of birth", "fewer in the record");

    private PatientComparison() {}

    static Stream<Difference> of(Situation here) {
        Identity expected = here.expected().patient();
        Identity presented = here.presented().patient();
        if (!expected.isComplete()) {
            return Stream.of(INCOMPLETE);
        }
        Stream<Difference> numbers = sameNumbers(expected, presented)
                ? Stream.empty()
                : Stream.of(new Difference(CHECK_PATIENT_DIFFERS, "identifiers", words(expected), words(presented)));
        return Stream.concat(
                numbers,
                expected.birthDate().stream()
                        .flatMap(born -> Situation.unequal(
                                CHECK_BIRTH_DATE_DIFFERS, "date of birth", born, presented.birthDate())));
    }

    private static boolean sameNumbers(Identity expected, Identity presented) {
        Set<String> systems =
                expected.numbers().stream().map(Identity.Number::system).collect(Collectors.toSet());
        long agree = presented.numbers().stream()
                .filter(expected.numbers()::contains)
                .count();
        boolean contradicted = presented.numbers().stream()
                .filter(each -> systems.contains(each.system()))
                .anyMatch(each -> !expected.numbers().contains(each));
        return agree >= Identity.NEEDED && !contradicted;
    }

    private static String words(Identity identity) {
        return identity.numbers().isEmpty()
                ? Difference.NOT_STATED
                : identity.numbers().stream()
                        .map(each -> each.value() + " (" + each.system() + ")")
                        .sorted()
                        .collect(Collectors.joining(", "));
    }
}
