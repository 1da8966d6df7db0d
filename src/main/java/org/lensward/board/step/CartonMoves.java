package org.lensward.board.step;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Supplier;
import org.lensward.check.Attempt;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.bank.ImplantCard;
import org.lensward.record.bank.Implantation;
import org.lensward.record.bank.LensBank;
import org.lensward.record.bank.Signature;

/** What happens to the carton once the lens check has passed a step: picked for the booking, then implanted. */
public final class CartonMoves {

    private final LensBank bank;
    private final Clock clock;

    public CartonMoves(LensBank bank, Clock clock) {
        this.bank = bank;
        this.clock = clock;
    }

    /**
     * Moves the carton as the step asks; most steps ask nothing. At sign-out it gives the patient's implant card.
     *
     * @param booking for whom
     * @param attempt the step that passed
     * @param unit the carton as it was scanned
     * @param implanted who implanted the lens; asked for at sign-out
     */
    public Outcome<Optional<ImplantCard>> after(
            String booking, Attempt attempt, LensUnit unit, Supplier<Implanted> implanted) {
        Signature signed = new Signature(attempt.presented().people().reader().orElse("unnamed"), clock.instant());
        if (attempt.at() == Checkpoint.PICK) {
            return picked(booking, attempt.presented().at().toLocalDate(), unit, signed)
                    .then(held -> Outcome.ready(Optional.empty()));
        }
        if (attempt.at() != Checkpoint.SIGN_OUT || unit.state() == UnitState.IMPLANTED) {
            return Outcome.ready(Optional.empty());
        }
        Implanted by = implanted.get();
        Implantation operation = new Implantation(
                booking,
                unit.evidence().resource(),
                by.surgeon(),
                by.hospital(),
                attempt.presented().at(),
                Optional.empty());
        return bank.implant(operation, signed).then(card -> Outcome.ready(Optional.of(card)));
    }

    /** Picks a free carton or one promised to the booking. */
    public Outcome<LensUnit> picked(String booking, LocalDate day, LensUnit unit, Signature signed) {
        String carton = unit.evidence().resource();
        Outcome<LensUnit> reserved = unit.state() == UnitState.AVAILABLE
                ? bank.move(carton, new Movement.Reserve(booking, day), signed)
                : Outcome.ready(unit);
        return reserved.then(held -> bank.move(carton, new Movement.Pick(booking, day), signed));
    }

    /** The carton as the bank has it now. */
    public Optional<LensUnit> now(LensUnit unit) {
        return bank.unit(unit.evidence().resource()).value();
    }
}
