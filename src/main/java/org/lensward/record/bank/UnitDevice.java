package org.lensward.record.bank;

import static org.lensward.lens.stock.UnitState.QUARANTINED;
import static org.lensward.lens.stock.UnitState.WASTED;

import java.util.Optional;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Device.DeviceNameType;
import org.hl7.fhir.r4.model.Device.DeviceUdiCarrierComponent;
import org.hl7.fhir.r4.model.Device.FHIRDeviceStatus;
import org.hl7.fhir.r4.model.Device.UDIEntryType;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Legible;
import org.lensward.record.Quantities;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** Writes a carton as a Device. */
final class UnitDevice {

    static final String PROFILE = Systems.profile("lens-unit");
    static final String STATE = Systems.extension("unit-state");
    static final String HELD_FOR = Systems.extension("held-for");
    static final String CONSIGNED = Systems.extension("consigned");
    static final String TYPE = "intraocular-lens";
    static final String POWER = "lens-power";
    static final String CYLINDER = "lens-cylinder";

    /** As R4's Device.udiCarrier.issuer names them. */
    private static final String GS1 = "http://hl7.org/fhir/NamingSystem/gs1-di";

    private static final String HIBC = "http://hl7.org/fhir/NamingSystem/hibcc-dI";

    private UnitDevice() {}

    /** A carton that was never in the record. */
    static Device of(String name, Delivery carton, String modelName) {
        Device device = new Device();
        device.setId(name);
        device.getMeta().addProfile(PROFILE);
        device.addExtension(CONSIGNED, new BooleanType(carton.owner().consigned()));
        device.setDefinition(new Reference(carton.model()));
        device.addUdiCarrier(label(carton));
        carton.identity().lot().ifPresent(device::setLotNumber);
        carton.identity().serial().ifPresent(device::setSerialNumber);
        device.setExpirationDateElement(
                new DateTimeType(carton.identity().expiry().toString()));
        device.addDeviceName().setName(modelName).setType(DeviceNameType.MODELNAME);
        device.setType(Codes.concept(Systems.DEVICE_TYPE, TYPE, "Intraocular lens"));
        property(device, POWER, "Lens power", carton.power());
        carton.cylinder().ifPresent(cylinder -> property(device, CYLINDER, "Lens cylinder", cylinder));
        device.setOwner(new Reference(carton.owner().name()));
        device.setLocation(new Reference(carton.location()));
        state(device, UnitState.AVAILABLE);
        return device;
    }

    private static DeviceUdiCarrierComponent label(Delivery carton) {
        String device = carton.identity().device();
        DeviceUdiCarrierComponent label = new DeviceUdiCarrierComponent()
                .setDeviceIdentifier(device)
                .setIssuer(device.matches("[0-9]{14}") ? GS1 : HIBC);
        carton.barcode()
                .ifPresent(barcode -> label.setCarrierHRF(Legible.text(barcode)).setEntryType(UDIEntryType.BARCODE));
        return label;
    }

    private static void property(Device device, String code, String display, Dioptres value) {
        device.addProperty()
                .setType(Codes.concept(Systems.LENS_PARAMETER, code, display))
                .addValueQuantity(Quantities.dioptres(value));
    }

    /** The Device as it was read, moved; what else it says is kept. */
    static Device moved(Device before, LensUnit after) {
        Device device = before.copy();
        device.setId(before.getIdElement().toUnqualifiedVersionless());
        state(device, after.state());
        remove(device, HELD_FOR);
        if (!Shelf.name(before.getLocation()).equals(after.location())) {
            device.setLocation(new Reference(after.location()));
        }
        after.heldFor().ifPresent(booking -> device.addExtension(HELD_FOR, new Reference(booking)));
        return device;
    }

    private static void state(Device device, UnitState state) {
        remove(device, STATE);
        device.addExtension(STATE, new CodeType(state.code()));
        device.setStatus(status(state));
    }

    /** The state as the Device has it, read or not. */
    static String state(Device device) {
        return Optional.ofNullable(device.getExtensionByUrl(STATE))
                .map(extension -> extension.getValue().primitiveValue())
                .orElse("");
    }

    /** What a person calls the model. */
    static String modelName(Device device) {
        return device.hasDeviceName() ? device.getDeviceNameFirstRep().getName() : Shelf.name(device.getDefinition());
    }

    private static void remove(Device device, String extension) {
        device.getExtension().removeIf(each -> extension.equals(each.getUrl()));
    }

    /** R4: an implanted device is active; one lost, expired or damaged is inactive. */
    static FHIRDeviceStatus status(UnitState state) {
        return state == WASTED || state == QUARANTINED ? FHIRDeviceStatus.INACTIVE : FHIRDeviceStatus.ACTIVE;
    }
}
