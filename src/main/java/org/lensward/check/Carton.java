package org.lensward.check;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.lens.stock.LensUnit;

/**
 * The carton in hand. Its label does not tell the power reliably: that comes from the bank's unit, or is read from the box by a second
 * person, and is never inferred.
 *
 * @param raw what the scanner gave, unchanged
 * @param label what it says
 * @param unit the unit of the lens bank with that label
 * @param read what a person reads on the box
 * @param state how the package is found
 */
public record Carton(
        String raw, Label label, Optional<LensUnit> unit, Optional<BoxRead> read, Optional<PackageState> state) {

    /**
     * What a carton's label says.
     *
     * @param device the device identifier (GS1 GTIN-14 or HIBC)
     * @param lot batch
     * @param serial number of the single lens
     * @param expiry last day of use
     */
    public record Label(String device, Optional<String> lot, Optional<String> serial, Optional<LocalDate> expiry) {

        /** What is wrong with it as a label: a device identifier that is missing, or a GTIN of other than 14 digits (GS1). */
        Optional<String> fault() {
            if (device.isBlank()) {
                return Optional.of("it names no device");
            }
            boolean cut = device.matches("\\d+") && device.length() != 14;
            return cut
                    ? Optional.of("its device identifier has " + device.length() + " digits, not 14")
                    : Optional.empty();
        }

        boolean isOf(LensUnit.Identity identity) {
            return equals(
                    new Label(identity.device(), identity.lot(), identity.serial(), Optional.of(identity.expiry())));
        }

        /** One line that names the carton, for comparison with the one picked. */
        @Override
        public String toString() {
            return device
                    + lot.map(each -> " lot " + each).orElse("")
                    + serial.map(each -> " serial " + each).orElse("")
                    + expiry.map(each -> " expiry " + each).orElse("");
        }
    }

    /**
     * What stands on the box.
     *
     * @param lens model, signed power and cylinder
     * @param reader who read it
     */
    public record BoxRead(CheckedLens lens, String reader) {}
}
