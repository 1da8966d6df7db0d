package org.lensward.board.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.board.api.Bookings;
import org.lensward.check.CheckPolicy;
import org.lensward.check.Expected;
import org.lensward.record.Patients;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.check.LensChecks;
import org.lensward.record.check.StoredCheck;

/** The lens check of each booking as it stands, put into questions. */
public final class StandingChecks {

    private final Bookings bookings;
    private final LensChecks checks;
    private final CheckPolicy policy;

    public StandingChecks(Bookings bookings, LensChecks checks, CheckPolicy policy) {
        this.bookings = bookings;
        this.checks = checks;
        this.policy = policy;
    }

    /** The check of a booking, such as {@code ServiceRequest/b1}. */
    Standing of(String booking) {
        Bundle gathered = bookings.gather(booking);
        StoredCheck check = checks.find(gathered, booking)
                .orElseThrow(() -> new UnreadableRecord(
                        IssueType.NOTFOUND,
                        booking,
                        "No lens check is open for it: its plan is withheld, or not made yet."));
        return new Standing(booking, new Shelf(gathered), check, policy);
    }

    /**
     * One check at one moment.
     *
     * @param booking whose
     * @param shelf all that concerns it
     * @param check as it stands
     * @param policy what is asked where
     */
    record Standing(String booking, Shelf shelf, StoredCheck check, CheckPolicy policy) {

        Expected expected() {
            return check.expected();
        }

        CheckView view() {
            var state = check.progress().state();
            return new CheckView(
                    booking.substring(booking.indexOf('/') + 1),
                    patient().map(Patients::name).orElse(""),
                    expected().eye().name() + " EYE",
                    check.task().getIdElement().getIdPart(),
                    state,
                    CheckView.stages(state),
                    state.next()
                            .map(at -> Questions.of(at, expected(), policy, naming()))
                            .orElse(List.of()),
                    check.task().getStatusReason().getText() == null
                            ? ""
                            : check.task().getStatusReason().getText());
        }

        private java.util.Optional<Patient> patient() {
            return shelf.find(Patient.class, check.task().getFor());
        }

        private Questions.Naming naming() {
            Map<String, String> numbers = patient().map(Patients::numberNames).orElse(Map.of());
            Map<String, String> models = shelf.all(DeviceDefinition.class)
                    .filter(DeviceDefinition::hasDeviceName)
                    .collect(Collectors.toMap(
                            each -> Shelf.name(each),
                            each -> each.getDeviceNameFirstRep().getName(),
                            (one, other) -> one,
                            LinkedHashMap::new));
            return new Questions.Naming(numbers, models, check.confirmedBy());
        }
    }
}
