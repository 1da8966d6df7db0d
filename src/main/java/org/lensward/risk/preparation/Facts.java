package org.lensward.risk.preparation;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Examination;
import org.lensward.eye.Eye;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Measured;
import org.lensward.eye.Person;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * What is known of the patient and the eye, and what is not.
 *
 * @param person whose eye it is
 * @param eye to be operated on
 * @param operation the day
 */
record Facts(Person person, Eye eye, LocalDate operation) {

    Optional<Entry> affirmed(Sign sign) {
        return eye.history().affirmed(sign);
    }

    boolean has(Sign sign) {
        return affirmed(sign).isPresent();
    }

    boolean unknown(Sign sign) {
        return eye.history().unknown(sign);
    }

    /** In the order of the vocabulary, whatever the order of the collection. */
    List<Entry> affirmed(Collection<Sign> signs) {
        return signs.stream().sorted().flatMap(sign -> affirmed(sign).stream()).toList();
    }

    List<Sign> unknown(Collection<Sign> signs) {
        return signs.stream().sorted().filter(this::unknown).toList();
    }

    Examination examination() {
        return eye.examination();
    }

    Optional<Measured<Millimetres>> length() {
        return eye.biometry().map(biometry -> biometry.axialLength());
    }

    Optional<Measured<Millimetres>> chamberDepth() {
        return eye.biometry().flatMap(biometry -> biometry.details().anteriorChamberDepth());
    }

    /** Years on the day of the operation. */
    Optional<Measured<PureNumber>> age() {
        return person.birthDate()
                .map(birth -> new Measured<>(
                        PureNumber.of(ChronoUnit.YEARS.between(birth, operation)),
                        person.evidence().at("birthDate")));
    }
}
