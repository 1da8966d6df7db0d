package org.lensward.board.api;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.stock.LensUnit;

/**
 * One carton of the bank, as JSON carries it.
 *
 * @param unit its Device
 * @param model the catalogue entry
 * @param power as labelled
 * @param cylinder as labelled
 * @param device identifier of its label
 * @param lot batch
 * @param serial number
 * @param expiry last day of use
 * @param location where it lies
 * @param owner whose it is
 * @param consigned whether it is on consignment
 * @param state where it stands
 * @param heldFor the booking it is held for
 */
public record Carton(
        String unit,
        String model,
        Amount power,
        Optional<Amount> cylinder,
        String device,
        Optional<String> lot,
        Optional<String> serial,
        LocalDate expiry,
        String location,
        String owner,
        boolean consigned,
        String state,
        Optional<String> heldFor) {

    static Carton of(LensUnit unit) {
        return new Carton(
                unit.evidence().resource(),
                unit.model(),
                Amount.of(unit.power()),
                unit.cylinder().map(Amount::of),
                unit.identity().device(),
                unit.identity().lot(),
                unit.identity().serial(),
                unit.identity().expiry(),
                unit.location(),
                unit.owner().name(),
                unit.owner().consigned(),
                unit.state().code(),
                unit.heldFor());
    }
}
