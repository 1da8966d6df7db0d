package org.lensward.record.bank;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.LensModel;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.quantity.Dioptres;

/**
 * One carton as it arrives.
 *
 * @param model the catalogue entry, such as {@code DeviceDefinition/lens-1}
 * @param power as labelled, signed
 * @param cylinder as labelled, for a toric lens
 * @param identity what its label says
 * @param barcode the label's whole identifier as a person reads it, where it was scanned
 * @param location where it is put
 * @param owner whose it is
 * @param day of the delivery
 */
public record Delivery(
        String model,
        Dioptres power,
        Optional<Dioptres> cylinder,
        LensUnit.Identity identity,
        Optional<String> barcode,
        String location,
        Owner owner,
        LocalDate day) {

    public Delivery {
        RecordName.require("DeviceDefinition", model);
        RecordName.require("Location", location);
        RecordName.require("Organization", owner.name());
    }

    /** Half of the smallest last digit of a label: below it two powers are one. */
    private static final Dioptres ONE_LABEL = Dioptres.of(0.005);

    /** Whether the model comes in this power and cylinder. */
    boolean isMadeAs(LensModel made) {
        boolean power = made.powers().stream().anyMatch(each -> isSame(each, power()));
        return power
                && cylinder()
                        .map(given -> made.cylinders().stream().anyMatch(each -> isSame(each, given)))
                        .orElse(!made.isToric());
    }

    private static boolean isSame(Dioptres one, Dioptres other) {
        return one.distanceTo(other).compareTo(ONE_LABEL) < 0;
    }

    /** Power and cylinder, for a message. */
    String strength() {
        return power.signed()
                + cylinder.map(value -> " cylinder " + value.rounded()).orElse("");
    }
}
