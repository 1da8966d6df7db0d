package org.lensward.record.bank;

import java.util.Optional;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Evidences;

/** The lasting name of a carton, which follows from its label alone: a serial number taken in twice meets itself. */
final class UnitName {

    private static final String PREFIX = "Device/unit-";

    private UnitName() {}

    /** Of the only carton with that serial number; none where the label has no serial number. */
    static Optional<String> bySerial(LensUnit.Identity label) {
        return label.serial().map(serial -> PREFIX + Evidences.digest("serial\n" + label.device() + "\n" + serial));
    }

    /** Of one of the cartons of a lot without serial numbers, counted from 1. */
    static Optional<String> byLot(LensUnit.Identity label, int running) {
        return label.lot()
                .map(lot -> PREFIX + Evidences.digest("lot\n" + label.device() + "\n" + lot + "\n" + running));
    }
}
