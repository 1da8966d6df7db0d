package org.lensward.board.api;

import static org.lensward.finding.FindingCode.CHECK_SCAN_UNREADABLE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.ChecksApi.Implanted;
import org.lensward.board.api.ChecksApi.Passed;
import org.lensward.board.api.ChecksApi.Step;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.CartonLabel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.bank.Implantation;
import org.lensward.record.bank.LensBank;
import org.lensward.record.bank.Signature;

/**
 * A lens check's step, from a page or a call alike. A check and a carton are two resources with a version each: the check is written first,
 * then the carton is moved. A repeat of the same step changes nothing in the check and finishes what was left of the move. The time is the
 * server's: nobody talks a check past an expiry or a day.
 */
public final class NursesDesk {

    private static final Evidence SCAN = new Evidence("scan", "", "");

    private final Bookings bookings;
    private final LensBank bank;
    private final Clock clock;

    public NursesDesk(Bookings bookings, LensBank bank, Clock clock) {
        this.bookings = bookings;
        this.bank = bank;
        this.clock = clock;
    }

    /** Presents patient, eye and carton at a checkpoint. */
    public Passed present(String booking, Checkpoint at, Step step) {
        PresentedJson told = PresentedJson.of(step.presented());
        CartonLabel label = label(step.scans());
        LensUnit unit = carton(label, booking);
        OffsetDateTime now = OffsetDateTime.now(clock);
        Attempt attempt = new Attempt(at, told.with(label, Optional.of(unit), now), told.exemption());
        if (at == Checkpoint.SIGN_OUT && step.implanted().isEmpty()) {
            throw new UnreadableRecord(IssueType.REQUIRED, "implanted", "Sign-out names surgeon and hospital.");
        }
        Standing standing =
                PlansApi.standing(bookings.act(booking, (each, gathered) -> each.present(gathered, booking, attempt)));
        Signature signed = new Signature(attempt.presented().people().reader().orElse("unnamed"), clock.instant());
        Optional<ImplantCard> card = moved(booking, at, new Moving(unit, signed, now), step.implanted(), standing);
        return new Passed(
                standing.check(),
                standing.changed(),
                bank.unit(unit.evidence().resource()).value().map(Carton::of),
                card);
    }

    /** What a carton's move needs to know. */
    private record Moving(LensUnit unit, Signature signed, OffsetDateTime now) {

        String name() {
            return unit.evidence().resource();
        }

        LocalDate day() {
            return now.toLocalDate();
        }
    }

    private Optional<ImplantCard> moved(
            String booking, Checkpoint at, Moving moving, Optional<Implanted> by, Standing standing) {
        if (at == Checkpoint.PICK) {
            written(picked(booking, moving), standing);
        }
        if (at != Checkpoint.SIGN_OUT || moving.unit().state() == UnitState.IMPLANTED) {
            return Optional.empty();
        }
        Implanted who = by.orElseThrow();
        Implantation implantation =
                new Implantation(booking, moving.name(), who.surgeon(), who.hospital(), moving.now(), Optional.empty());
        return Optional.of(written(bank.implant(implantation, moving.signed()), standing));
    }

    /** What the bank made of it; the check has been written by now, and whoever is refused is told so. */
    private static <T> T written(Outcome<T> moved, Standing standing) {
        return moved.value().orElseThrow(() -> Refusal.checkWritten(standing.check(), moved.findings()));
    }

    private Outcome<LensUnit> picked(String booking, Moving moving) {
        Outcome<LensUnit> held = moving.unit().state() == UnitState.AVAILABLE
                ? bank.move(moving.name(), new Movement.Reserve(booking, moving.day()), moving.signed())
                : Outcome.ready(moving.unit());
        return held.then(unit -> bank.move(moving.name(), new Movement.Pick(booking, moving.day()), moving.signed()));
    }

    /**
     * Records that another lens than the planned one is in the eye. The lens check is not passed by it and stays as it stands; the
     * operation is completed with the reason why.
     *
     * @param by who records it
     */
    public ImplantCard implantedInstead(String booking, ChecksApi.Deviation deviation, String by) {
        LensUnit unit = carton(label(deviation.scans()), booking);
        Moving moving =
                new Moving(unit, Field.read("by", () -> new Signature(by, clock.instant())), OffsetDateTime.now(clock));
        Implantation.Deviation why = Field.read(
                "clinician or reason", () -> new Implantation.Deviation(deviation.clinician(), deviation.reason()));
        if (unit.state() == UnitState.AVAILABLE || unit.state() == UnitState.RESERVED) {
            Refusal.unless(picked(booking, moving));
        }
        return Refusal.unless(bank.implant(
                new Implantation(
                        booking,
                        moving.name(),
                        deviation.surgeon(),
                        deviation.hospital(),
                        moving.now(),
                        Optional.of(why)),
                moving.signed()));
    }

    /** Half a label tells no carton from its neighbours; people scan again before anything is judged. */
    private CartonLabel label(List<String> scans) {
        CartonLabel label = LabelsApi.label(scans, clock);
        if (label.identity().isEmpty()
                || label.lot().isEmpty() && label.serial().isEmpty()) {
            throw Refusal.nothingWritten(List.of(
                    Finding.of(CHECK_SCAN_UNREADABLE, SCAN, "it gives no expiry, or neither lot nor serial number")));
        }
        return label;
    }

    private LensUnit carton(CartonLabel label, String booking) {
        Outcome<List<LensUnit>> alike = bank.labelled(label.identity().orElseThrow());
        return ChecksApi.unit(alike, label, booking)
                .orElseThrow(
                        () -> Refusal.nothingWritten(List.of(Finding.of(UNIT_NOT_IN_BANK, SCAN, "with this label"))));
    }
}
