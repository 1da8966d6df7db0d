package org.lensward.risk.named;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Eye;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Person;
import org.lensward.eye.Sign;

/**
 * Whose operation it is.
 *
 * @param person whose eye it is
 * @param eye the eye to be operated on
 * @param operation the day, by which age is counted
 */
public record Subject(Person person, Eye eye, LocalDate operation) {

    /** The statements that affirm any of the signs, in the order asked. */
    List<Entry> affirmed(Sign... signs) {
        return Stream.of(signs)
                .flatMap(sign -> eye.history().affirmed(sign).stream())
                .toList();
    }

    /** In whole years on the day; empty where the birth date is unknown. */
    Optional<Long> age() {
        return person.birthDate().map(birth -> ChronoUnit.YEARS.between(birth, operation));
    }
}
