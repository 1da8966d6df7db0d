package org.lensward.board.step;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;

/** One booking whose lens is checked, in Bundles or in a running record. */
public sealed interface CheckedBooking permits BundledBooking, RecordedBooking {

    /** Such as {@code ServiceRequest/booking-01}. */
    String booking();

    /** Every carton of the bank. */
    Outcome<List<LensUnit>> units();

    /** Takes the action on what is there now, and keeps what it writes. */
    CheckAnswer act(BiFunction<LensChecks, Bundle, CheckAnswer> action);

    /** The transaction to hand out, where it is not posted. */
    Optional<Bundle> written();
}
