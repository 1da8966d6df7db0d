package org.lensward.record.r5;

import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r5.model.CodeableConcept;
import org.hl7.fhir.r5.model.Coding;
import org.hl7.fhir.r5.model.DateTimeType;
import org.hl7.fhir.r5.model.Device.DeviceNameComponent;
import org.hl7.fhir.r5.model.Device.DeviceUdiCarrierComponent;
import org.hl7.fhir.r5.model.Enumerations.CommonLanguages;
import org.hl7.fhir.r5.model.InventoryItem;
import org.hl7.fhir.r5.model.InventoryItem.InventoryItemInstanceComponent;
import org.hl7.fhir.r5.model.InventoryItem.InventoryItemStatusCodes;
import org.hl7.fhir.r5.model.Quantity;
import org.hl7.fhir.r5.model.Reference;
import org.lensward.record.Systems;

/**
 * One carton as an InventoryItem (FHIR R5, InventoryItem).
 *
 * @param device in R5
 * @param unit as the bank keeps it; R5's Device has no property of more than one value
 */
record StockItem(org.hl7.fhir.r5.model.Device device, Device unit) {

    private static final String NAME_TYPES = "http://hl7.org/fhir/inventoryitem-nametype";

    private static final Map<Device.FHIRDeviceStatus, InventoryItemStatusCodes> STATUS = Map.of(
            Device.FHIRDeviceStatus.ACTIVE, InventoryItemStatusCodes.ACTIVE,
            Device.FHIRDeviceStatus.INACTIVE, InventoryItemStatusCodes.INACTIVE,
            Device.FHIRDeviceStatus.ENTEREDINERROR, InventoryItemStatusCodes.ENTEREDINERROR);

    InventoryItem item() {
        InventoryItem item = new InventoryItem();
        item.setId(device.getIdElement().getIdPart());
        item.setStatus(STATUS.getOrDefault(unit.getStatus(), InventoryItemStatusCodes.UNKNOWN));
        device.getType().forEach(item::addCategory);
        device.getUdiCarrier().stream().map(StockItem::code).forEach(item::addCode);
        device.getName().forEach(name -> name(item, name));
        if (device.hasOwner()) {
            item.addResponsibleOrganization()
                    .setRole(new CodeableConcept().setText("owner"))
                    .setOrganization(device.getOwner());
        }
        item.setInventoryStatus(state());
        characteristics(item);
        item.setInstance(instance());
        item.setProductReference(new Reference("Device/" + device.getIdElement().getIdPart()));
        device.getExtension().stream()
                .filter(each -> !each.getUrl().equals(Systems.extension("unit-state")))
                .forEach(item::addExtension);
        return item;
    }

    private static CodeableConcept code(DeviceUdiCarrierComponent udi) {
        return new CodeableConcept(new Coding().setSystem(udi.getIssuer()).setCode(udi.getDeviceIdentifier()));
    }

    private static void name(InventoryItem item, DeviceNameComponent name) {
        item.addName()
                .setNameType(new Coding().setSystem(NAME_TYPES).setCode("trade-name"))
                .setLanguage(CommonLanguages.EN)
                .setName(name.getValue());
    }

    private List<CodeableConcept> state() {
        return unit.getExtensionsByUrl(Systems.extension("unit-state")).stream()
                .map(each -> new CodeableConcept(new Coding()
                        .setSystem(Systems.UNIT_STATE)
                        .setCode(each.getValue().primitiveValue())))
                .toList();
    }

    private void characteristics(InventoryItem item) {
        unit.getProperty().forEach(property -> property.getValueQuantity().forEach(value -> item.addCharacteristic()
                .setCharacteristicType(new CodeableConcept(new Coding()
                        .setSystem(property.getType().getCodingFirstRep().getSystem())
                        .setCode(property.getType().getCodingFirstRep().getCode())))
                .setValue(new Quantity()
                        .setValue(value.getValue())
                        .setUnit(value.getUnit())
                        .setSystem(value.getSystem())
                        .setCode(value.getCode()))));
    }

    private InventoryItemInstanceComponent instance() {
        InventoryItemInstanceComponent instance = new InventoryItemInstanceComponent();
        device.getIdentifier().forEach(instance::addIdentifier);
        if (unit.hasSerialNumber()) {
            instance.addIdentifier().setValue(unit.getSerialNumber()).getType().setText("serial number");
        }
        instance.setLotNumber(unit.getLotNumber());
        if (unit.hasExpirationDate()) {
            instance.setExpiryElement(
                    new DateTimeType(unit.getExpirationDateElement().getValueAsString()));
        }
        if (unit.hasPatient()) {
            instance.setSubject(new Reference(unit.getPatient().getReference()));
        }
        if (device.hasLocation()) {
            instance.setLocation(device.getLocation());
        }
        return instance;
    }
}
