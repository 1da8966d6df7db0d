package org.lensward.record.bank;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.record.Shelf;

/**
 * The cartons held for one booking. R4 cannot search a Device by an extension, but it can search by the trail: every carton that was ever
 * moved for the booking has a Provenance that names it.
 */
final class HeldUnits {

    private HeldUnits() {}

    static String question(String booking) {
        RecordName.require("ServiceRequest", booking);
        return "Device?_has:Provenance:target:entity=" + booking + "&_count=500";
    }

    static boolean isHeld(Device device, String booking) {
        return holder(device).filter(booking::equals).isPresent();
    }

    /** The booking the Device says it is held for. */
    static Optional<String> holder(Device device) {
        List<Extension> holders = device.getExtensionsByUrl(UnitDevice.HELD_FOR);
        return holders.stream()
                .map(Extension::getValue)
                .filter(Reference.class::isInstance)
                .map(reference -> Shelf.name((Reference) reference))
                .findFirst();
    }
}
