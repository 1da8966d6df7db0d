package org.lensward.lens.stock;

import static org.lensward.finding.FindingCode.UNIT_ALREADY_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_EXPIRED;
import static org.lensward.finding.FindingCode.UNIT_GONE;
import static org.lensward.finding.FindingCode.UNIT_HELD_FOR_ANOTHER;
import static org.lensward.finding.FindingCode.UNIT_NOT_AVAILABLE;
import static org.lensward.finding.FindingCode.UNIT_STEP_MISSING;
import static org.lensward.lens.stock.UnitState.AVAILABLE;
import static org.lensward.lens.stock.UnitState.IMPLANTED;
import static org.lensward.lens.stock.UnitState.PICKED;
import static org.lensward.lens.stock.UnitState.QUARANTINED;
import static org.lensward.lens.stock.UnitState.RESERVED;
import static org.lensward.lens.stock.UnitState.WASTED;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;

/**
 * Which movement is allowed in which state, and what it leads to. Every pair has an answer; a step that was already done is answered with
 * the unit as it is, so that doing it twice does no harm. What is in an eye or written off never moves again.
 */
public final class Movements {

    private final LensUnit unit;
    private final Movement movement;

    private Movements(LensUnit unit, Movement movement) {
        this.unit = unit;
        this.movement = movement;
    }

    /** The unit after the movement, or why it cannot be made. */
    public static Outcome<LensUnit> apply(LensUnit unit, Movement movement) {
        return new Movements(unit, movement).outcome();
    }

    private Outcome<LensUnit> outcome() {
        if (movement instanceof Movement.GoodsIn) {
            return refused(UNIT_ALREADY_IN_BANK, state());
        }
        if (unit.state() == IMPLANTED || unit.state() == WASTED) {
            return refused(UNIT_GONE, state(), done());
        }
        if (movement instanceof Movement.Reserve reserve) {
            return reserve(reserve);
        }
        if (movement instanceof Movement.Pick pick) {
            return unit.state() == PICKED
                    ? unchanged(pick.forBooking())
                    : next(pick.forBooking(), RESERVED, pick.day());
        }
        if (movement instanceof Movement.Return back) {
            return giveBack(back);
        }
        if (movement instanceof Movement.Implant implant) {
            return next(implant.in(), PICKED, implant.day());
        }
        if (movement instanceof Movement.Release release) {
            return release(release);
        }
        if (movement instanceof Movement.Carry carry) {
            return unit.state() == PICKED
                    ? refused(UNIT_NOT_AVAILABLE, state(), done())
                    : Outcome.ready(unit.at(carry.store()));
        }
        return free(movement instanceof Movement.Waste ? WASTED : QUARANTINED);
    }

    private Outcome<LensUnit> reserve(Movement.Reserve reserve) {
        if (isHeld()) {
            return unchanged(reserve.forBooking());
        }
        return unit.state() == AVAILABLE
                ? inDate(reserve.day(), RESERVED, reserve.forBooking())
                : refused(UNIT_NOT_AVAILABLE, state(), done());
    }

    private Outcome<LensUnit> giveBack(Movement.Return back) {
        if (isHeld()) {
            return unchanged(back.from()).then(held -> free(AVAILABLE));
        }
        return unit.state() == AVAILABLE ? Outcome.ready(unit) : refused(UNIT_NOT_AVAILABLE, state(), done());
    }

    private Outcome<LensUnit> release(Movement.Release release) {
        if (isHeld()) {
            return refused(UNIT_NOT_AVAILABLE, state(), done());
        }
        return unit.isInDateOn(release.day()) ? free(AVAILABLE) : expired(release.day());
    }

    /** The step after {@code before}: a pick after the reservation, the implantation after the pick. */
    private Outcome<LensUnit> next(String booking, UnitState before, LocalDate day) {
        UnitState after = before == RESERVED ? PICKED : IMPLANTED;
        if (isHeld()) {
            return unchanged(booking)
                    .then(held -> held.state() == before ? inDate(day, after, booking) : stepMissing(before));
        }
        return stepMissing(before);
    }

    private Outcome<LensUnit> inDate(LocalDate day, UnitState state, String booking) {
        return unit.isInDateOn(day) ? Outcome.ready(unit.standing(state, Optional.of(booking))) : expired(day);
    }

    private Outcome<LensUnit> free(UnitState state) {
        return Outcome.ready(unit.standing(state, Optional.empty()));
    }

    private Outcome<LensUnit> unchanged(String booking) {
        return unit.heldFor().filter(booking::equals).isPresent()
                ? Outcome.ready(unit)
                : refused(UNIT_HELD_FOR_ANOTHER, state(), unit.heldFor().orElse("nobody"), booking);
    }

    private Outcome<LensUnit> stepMissing(UnitState before) {
        return refused(UNIT_STEP_MISSING, state(), done(), before.code());
    }

    private Outcome<LensUnit> expired(LocalDate day) {
        return refused(UNIT_EXPIRED, unit.identity().expiry(), day);
    }

    private Outcome<LensUnit> refused(FindingCode code, Object... particulars) {
        return Outcome.withheld(Finding.of(code, unit.evidence(), particulars));
    }

    private boolean isHeld() {
        return unit.state() == RESERVED || unit.state() == PICKED;
    }

    private String state() {
        return unit.state().code();
    }

    private String done() {
        return movement.kind().done();
    }
}
