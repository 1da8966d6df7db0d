package org.lensward.record.r5;

import org.hl7.fhir.convertors.factory.VersionConvertorFactory_40_50;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DomainResource;
import org.hl7.fhir.r5.model.DeviceUsage;
import org.hl7.fhir.r5.model.InventoryItem;

/**
 * Cartons and implanted lenses in FHIR R5 (5.0.0), by HL7's own conversion where there is one. A translation alone: nothing is read or
 * written, and what R5 has no element for stays in our extensions. Profiles are R4's and are not claimed.
 */
public final class InR5 {

    private InR5() {}

    /** A carton or an implanted lens. */
    public static org.hl7.fhir.r5.model.Device device(Device device) {
        return (org.hl7.fhir.r5.model.Device) VersionConvertorFactory_40_50.convertResource(unclaimed(device));
    }

    /** The use of a lens in an eye: R4's DeviceUseStatement is R5's DeviceUsage. */
    public static DeviceUsage usage(DeviceUseStatement use) {
        return (DeviceUsage) VersionConvertorFactory_40_50.convertResource(unclaimed(use));
    }

    /** A carton as stock: R4 has no resource for it, so the bank keeps a Device. */
    public static InventoryItem stock(Device device) {
        return new StockItem(device(device), device).item();
    }

    private static <T extends DomainResource> T unclaimed(T resource) {
        @SuppressWarnings("unchecked") // a copy is of the class of what is copied
        T copy = (T) resource.copy();
        copy.getMeta().getProfile().clear();
        return copy;
    }
}
