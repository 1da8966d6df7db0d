package org.lensward.board.fhir;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.board.api.Bookings;
import org.lensward.board.step.BundledBooking;
import org.lensward.board.step.CartonMoves;
import org.lensward.board.step.CheckedBooking;
import org.lensward.board.step.Implanted;
import org.lensward.board.step.Scanned;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.check.Presented;
import org.lensward.finding.Outcome;
import org.lensward.flow.BundlePlanning;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Changes;
import org.lensward.record.Shelf;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.bank.LensBank;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.LensChecks;
import org.springframework.http.HttpStatus;

/** A step of a lens check: in the record it is taken and written, in a Bundle it is only tried. */
final class AskedChecks {

    private final BookingReference recorded;
    private final Bookings bookings;
    private final LensBank bank;
    private final Trial trial;

    AskedChecks(BookingReference recorded, Bookings bookings, LensBank bank, Trial trial) {
        this.recorded = recorded;
        this.bookings = bookings;
        this.bank = bank;
        this.trial = trial;
    }

    /**
     * What a step in a Bundle is tried with.
     *
     * @param fhir FHIR R4
     * @param planning as the plans are made
     * @param checks as lenses are checked
     * @param clock by which today is told
     */
    record Trial(FhirContext fhir, BundlePlanning planning, LensChecks checks, Clock clock) {

        CheckedBooking of(Bundle bundle, String booking) {
            return new BundledBooking(bundle, booking, checks, fhir).planned(planning);
        }
    }

    Verified verify(VerifyInput input) {
        return input.bundle().map(bundle -> tried(bundle, input)).orElseGet(() -> taken(input));
    }

    private Verified taken(VerifyInput input) {
        String booking = recorded.find(input.booking().orElseThrow()).booking();
        Optional<Implanted> implanted = input.presented().implanted();
        if (input.at() == Checkpoint.SIGN_OUT && implanted.isEmpty()) {
            throw new FhirRefusal(
                    HttpStatus.BAD_REQUEST, IssueType.REQUIRED, "At sign-out the parameter implanted is missing.");
        }
        Outcome<Scanned> carton = label(input).then(label -> Scanned.ofTheBank(label, bank::labelled, booking));
        if (carton.value().isEmpty()) {
            return Verified.refused(carton.findings());
        }
        Attempt attempt =
                attempt(input, input.presented().with(carton.value().get(), OffsetDateTime.now(trial.clock())));
        Verified verified = Verified.of(bookings.act(booking, (checks, now) -> checks.present(now, booking, attempt)));
        if (verified.verdict() != Verified.Verdict.PASSED) {
            return verified;
        }
        LensUnit unit = carton.value().get().unit().orElseThrow();
        CartonMoves moves = new CartonMoves(bank, trial.clock());
        Outcome<Optional<ImplantCard>> card = moves.after(booking, attempt, unit, implanted::orElseThrow);
        return verified.and(card.findings(), moves.now(unit), card.value().flatMap(given -> given));
    }

    private Verified tried(Bundle bundle, VerifyInput input) {
        String booking = booking(bundle, input.booking());
        CheckedBooking checked = trial.of(bundle, booking);
        Outcome<CartonLabel> label = label(input);
        if (label.value().isEmpty()) {
            return Verified.refused(label.findings());
        }
        Scanned scanned = Scanned.of(label.value().get(), checked.units(), booking);
        Attempt attempt = attempt(input, input.presented().with(scanned));
        CheckAnswer answer = checked.act((checks, now) -> checks.present(now, booking, attempt));
        return Verified.of(answer);
    }

    private Outcome<CartonLabel> label(VerifyInput input) {
        return Scanned.label(input.scans(), LocalDate.now(trial.clock()));
    }

    private static Attempt attempt(VerifyInput input, Presented presented) {
        return new Attempt(input.at(), presented, input.presented().exemption());
    }

    /** The booking that is named; without a name, the only one of lens surgery there is. */
    private static String booking(Bundle bundle, Optional<Reference> named) {
        List<String> all = new Shelf(bundle)
                .all(ServiceRequest.class)
                .filter(Changes::isBooking)
                .map(Shelf::name)
                .filter(name -> named.map(Shelf::name).map(name::equals).orElse(true))
                .toList();
        if (all.size() != 1) {
            throw new FhirRefusal(
                    HttpStatus.UNPROCESSABLE_ENTITY,
                    IssueType.REQUIRED,
                    all.isEmpty()
                            ? "The booking (a ServiceRequest of lens surgery) is not in the Bundle."
                            : "There are several bookings in the Bundle; name one with the parameter booking.");
        }
        return all.get(0);
    }
}
