package org.lensward.board.api;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.board.api.ChecksApi.Passed;
import org.lensward.board.api.ChecksApi.Step;
import org.lensward.board.api.PlansApi.Standing;
import org.lensward.board.step.CartonMoves;
import org.lensward.board.step.Scanned;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
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

    private final Bookings bookings;
    private final LensBank bank;
    private final CartonMoves moves;
    private final Clock clock;

    public NursesDesk(Bookings bookings, LensBank bank, Clock clock) {
        this.bookings = bookings;
        this.bank = bank;
        this.moves = new CartonMoves(bank, clock);
        this.clock = clock;
    }

    /** Presents patient, eye and carton at a checkpoint. */
    public Passed present(String booking, Checkpoint at, Step step) {
        PresentedJson told = PresentedJson.of(step.presented());
        Scanned scanned = scanned(step.scans(), booking);
        Attempt attempt = new Attempt(at, told.with(scanned, OffsetDateTime.now(clock)), told.exemption());
        if (at == Checkpoint.SIGN_OUT && step.implanted().isEmpty()) {
            throw new UnreadableRecord(IssueType.REQUIRED, "implanted", "Sign-out names surgeon and hospital.");
        }
        Standing standing =
                PlansApi.standing(bookings.act(booking, (each, gathered) -> each.present(gathered, booking, attempt)));
        LensUnit unit = scanned.unit().orElseThrow();
        Optional<ImplantCard> card = written(
                moves.after(booking, attempt, unit, () -> step.implanted().orElseThrow()), standing);
        return new Passed(standing.check(), standing.changed(), moves.now(unit).map(Carton::of), card);
    }

    /** What the bank made of it; the check has been written by now, and whoever is refused is told so. */
    private static <T> T written(Outcome<T> moved, Standing standing) {
        return moved.value().orElseThrow(() -> Refusal.checkWritten(standing.check(), moved.findings()));
    }

    /**
     * Records that another lens than the planned one is in the eye. The lens check is not passed by it and stays as it stands; the
     * operation is completed with the reason why.
     *
     * @param by who records it
     */
    public ImplantCard implantedInstead(String booking, ChecksApi.Deviation deviation, String by) {
        LensUnit unit = scanned(deviation.scans(), booking).unit().orElseThrow();
        OffsetDateTime now = OffsetDateTime.now(clock);
        Signature signed = Field.read("by", () -> new Signature(by, clock.instant()));
        Implantation.Deviation why = Field.read(
                "clinician or reason", () -> new Implantation.Deviation(deviation.clinician(), deviation.reason()));
        if (unit.state() == UnitState.AVAILABLE || unit.state() == UnitState.RESERVED) {
            Refusal.unless(moves.picked(booking, now.toLocalDate(), unit, signed));
        }
        Implantation implantation = new Implantation(
                booking, unit.evidence().resource(), deviation.surgeon(), deviation.hospital(), now, Optional.of(why));
        return Refusal.unless(bank.implant(implantation, signed));
    }

    /** Half a label tells no carton from its neighbours; people scan again before anything is judged. */
    private Scanned scanned(List<String> scans, String booking) {
        Outcome<Scanned> scanned = Scanned.ofTheBank(LabelsApi.label(scans, clock), bank::labelled, booking);
        return scanned.value().orElseThrow(() -> Refusal.nothingWritten(scanned.findings()));
    }
}
