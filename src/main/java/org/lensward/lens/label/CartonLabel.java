package org.lensward.lens.label;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.stock.LensUnit;

/**
 * What a carton's label says. It says no power: that comes from the bank's unit or a second reader, never from a device identifier.
 *
 * <p>GS1 protects the device identifier alone by a check digit: a lot or serial cut short or mistyped cannot be seen here, only against
 * the bank's unit.
 *
 * @param issuer whose rules the identifier follows
 * @param device GTIN of 14 digits, or HIBC labeler, product and unit of measure without flag and check character
 * @param lot batch, where printed
 * @param serial number of the single lens, where printed
 * @param expiry last day of use, where printed; a label without one is readable but tells nothing of it
 * @param production day of manufacture, where printed
 * @param quantity how many pieces, where printed
 * @param raw the scans as they came, one a line
 */
public record CartonLabel(
        Issuer issuer,
        String device,
        Optional<String> lot,
        Optional<String> serial,
        Optional<LocalDate> expiry,
        Optional<LocalDate> production,
        Optional<Integer> quantity,
        String raw) {

    /** The identity of the unit, where the label gives an expiry. */
    public Optional<LensUnit.Identity> identity() {
        return expiry.map(day -> new LensUnit.Identity(device, lot, serial, day));
    }
}
