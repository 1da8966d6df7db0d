package org.lensward.record.bank;

import java.util.Optional;
import org.hl7.fhir.r4.model.Device;

/**
 * What a recall names.
 *
 * @param lot batch, as printed on the carton
 * @param device the device identifier, where the recall names one: lots of different models may bear one number
 */
public record RecalledLot(String lot, Optional<String> device) {

    public RecalledLot {
        if (lot.isBlank()) {
            throw new IllegalArgumentException("A recall names a lot");
        }
    }

    /** Whether that carton is meant or may be: what the record leaves open does not let a carton escape. */
    boolean mayBe(Device carton) {
        return mayBeDevice(carton) && (!hasLot(carton) || isLot(carton));
    }

    static boolean hasLot(Device carton) {
        return carton.hasLotNumber() && !carton.getLotNumber().isBlank();
    }

    private boolean isLot(Device carton) {
        return carton.getLotNumber().strip().equalsIgnoreCase(lot.strip());
    }

    private boolean mayBeDevice(Device carton) {
        return device.isEmpty()
                || carton.getUdiCarrier().stream().noneMatch(each -> each.hasDeviceIdentifier())
                || carton.getUdiCarrier().stream().anyMatch(each -> device.get().equals(each.getDeviceIdentifier()));
    }
}
