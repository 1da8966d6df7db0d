package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Dioptres;

/**
 * One carton with one lens.
 *
 * @param evidence its Device in the record; the version is what optimistic locking compares
 * @param model the catalogue entry, such as {@code DeviceDefinition/lens-1}
 * @param power as labelled, signed
 * @param cylinder as labelled, for a toric lens
 * @param identity what its label says
 * @param location the site it lies at, such as {@code Location/theatre-store}
 * @param owner whose it is
 * @param state where it stands
 * @param heldFor the booking it is reserved, picked or implanted for
 */
public record LensUnit(
        Evidence evidence,
        String model,
        Dioptres power,
        Optional<Dioptres> cylinder,
        Identity identity,
        String location,
        Owner owner,
        UnitState state,
        Optional<String> heldFor) {

    /**
     * What a carton's label says of the very lens inside.
     *
     * @param device the device identifier (GS1 GTIN-14 or HIBC), which does not tell the power reliably
     * @param lot batch, where it has one
     * @param serial number of the single lens, where it has one
     * @param expiry last day of use
     */
    public record Identity(String device, Optional<String> lot, Optional<String> serial, LocalDate expiry) {}

    public LensUnit {
        boolean held = state == UnitState.RESERVED || state == UnitState.PICKED || state == UnitState.IMPLANTED;
        if (held != heldFor.isPresent()) {
            throw new IllegalArgumentException(
                    "A unit that is " + state.code() + (held ? " is held for a booking" : " is held for none"));
        }
    }

    /** The same carton under another version of its Device. */
    public LensUnit version(Evidence other) {
        return new LensUnit(other, model, power, cylinder, identity, location, owner, state, heldFor);
    }

    /** The same carton at another site. */
    public LensUnit at(String other) {
        return new LensUnit(evidence, model, power, cylinder, identity, other, owner, state, heldFor);
    }

    /** The same carton where it stands after a movement. */
    public LensUnit standing(UnitState other, Optional<String> booking) {
        return new LensUnit(evidence, model, power, cylinder, identity, location, owner, other, booking);
    }

    /** Whether it may still be implanted on that day, as far as its expiry goes: the last day counts. */
    public boolean isInDateOn(LocalDate day) {
        return !identity.expiry().isBefore(day);
    }
}
