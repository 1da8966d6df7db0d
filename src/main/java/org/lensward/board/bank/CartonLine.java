package org.lensward.board.bank;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;

/**
 * One carton on a list.
 *
 * @param id of its Device
 * @param version that is shown
 * @param lens model, power, cylinder
 * @param place where it lies
 * @param store the same, as the record refers to it
 * @param state where it stands, in a word
 * @param device identifier of its label
 * @param lot batch, or a dash
 * @param serial number, or a dash
 * @param expiry last day of use
 * @param shelf "in date", "soon out of date" or "out of date"
 * @param owner whose it is
 * @param booking the booking it is held for
 * @param patient who that is for
 */
record CartonLine(
        String id,
        String version,
        String lens,
        String place,
        String store,
        String state,
        String device,
        String lot,
        String serial,
        LocalDate expiry,
        String shelf,
        String owner,
        Optional<String> booking,
        Optional<String> patient) {

    /** Whether it is held for somebody. */
    public boolean isHeld() {
        return state.equals("reserved") || state.equals("picked");
    }

    /** Whether nothing more can be done with it. */
    public boolean isGone() {
        return state.equals("implanted") || state.equals("wasted");
    }

    /** Makes lines of cartons. */
    record Writer(Names names, LocalDate today, LocalDate soon) {

        CartonLine line(LensUnit unit) {
            return new CartonLine(
                    Names.id(unit.evidence().resource()),
                    unit.evidence().version(),
                    names.lens(LensKind.of(unit)),
                    names.place(unit.location()),
                    unit.location(),
                    unit.state().code(),
                    unit.identity().device(),
                    unit.identity().lot().orElse("-"),
                    unit.identity().serial().orElse("-"),
                    unit.identity().expiry(),
                    shelf(unit),
                    names.owner(unit.owner().name()) + (unit.owner().consigned() ? ", on consignment" : ""),
                    unit.heldFor().map(Names::id),
                    unit.heldFor()
                            .filter(booking -> unit.state() != UnitState.WASTED)
                            .map(names::patient));
        }

        private String shelf(LensUnit unit) {
            LocalDate expiry = unit.identity().expiry();
            return expiry.isBefore(today) ? "out of date" : expiry.isAfter(soon) ? "in date" : "soon out of date";
        }
    }
}
