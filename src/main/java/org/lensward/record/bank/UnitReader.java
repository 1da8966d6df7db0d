package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.UNIT_UNREADABLE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Device.DeviceUdiCarrierComponent;
import org.hl7.fhir.r4.model.Device.FHIRDeviceStatus;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.UnitKind;

/** Reads cartons. One that cannot be read whole is left out with a finding; it is never read in part. */
final class UnitReader {

    private final Evidences evidences;

    UnitReader(Evidences evidences) {
        this.evidences = evidences;
    }

    /** Every carton that can be read, and why the others cannot; what was entered in error is none. */
    Outcome<List<LensUnit>> readAll(Stream<Device> devices) {
        List<LensUnit> units = new ArrayList<>();
        List<Finding> found = new ArrayList<>();
        devices.filter(device -> device.getStatus() != FHIRDeviceStatus.ENTEREDINERROR)
                .map(this::read)
                .forEach(outcome -> {
                    outcome.value().ifPresent(units::add);
                    found.addAll(outcome.findings());
                });
        return Outcome.ready(List.copyOf(units), found);
    }

    Outcome<LensUnit> read(Device device) {
        try {
            return Outcome.ready(unit(device));
        } catch (IllegalArgumentException unreadable) {
            return Outcome.withheld(
                    Finding.of(UNIT_UNREADABLE, evidences.of(device, ""), String.valueOf(unreadable.getMessage())));
        }
    }

    private LensUnit unit(Device device) {
        require(Codes.has(device.getType(), Systems.DEVICE_TYPE, UnitDevice.TYPE), "it is no intraocular lens");
        UnitState state = state(device);
        require(device.getStatus() == UnitDevice.status(state), "its status contradicts that it is " + state.code());
        return new LensUnit(
                evidences.of(device, ""),
                named(device.getDefinition(), "lens model"),
                power(device, UnitDevice.POWER).orElseThrow(() -> new IllegalArgumentException("it has no power")),
                power(device, UnitDevice.CYLINDER),
                identity(device),
                named(device.getLocation(), "location"),
                new Owner(named(device.getOwner(), "owner"), consigned(device)),
                state,
                HeldUnits.holder(device));
    }

    private static UnitState state(Device device) {
        String code = UnitDevice.state(device);
        return Stream.of(UnitState.values())
                .filter(state -> state.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("its state '" + code + "' is not known"));
    }

    private static LensUnit.Identity identity(Device device) {
        List<String> identifiers = device.getUdiCarrier().stream()
                .filter(DeviceUdiCarrierComponent::hasDeviceIdentifier)
                .map(DeviceUdiCarrierComponent::getDeviceIdentifier)
                .distinct()
                .toList();
        require(identifiers.size() == 1, "it has not one device identifier");
        Optional<String> lot = Optional.ofNullable(device.getLotNumber());
        Optional<String> serial = Optional.ofNullable(device.getSerialNumber());
        require(lot.isPresent() || serial.isPresent(), "it has neither lot nor serial number");
        return new LensUnit.Identity(identifiers.get(0), lot, serial, expiry(device));
    }

    private static LocalDate expiry(Device device) {
        String written = device.getExpirationDateElement().getValueAsString();
        require(written != null && written.length() >= 10, "it has no day of expiry");
        return LocalDate.parse(written.substring(0, 10));
    }

    private static Optional<Dioptres> power(Device device, String code) {
        List<Quantity> given = device.getProperty().stream()
                .filter(property -> Codes.has(property.getType(), Systems.LENS_PARAMETER, code))
                .flatMap(property -> property.getValueQuantity().stream())
                .toList();
        require(given.size() <= 1, "it has more than one " + code);
        return given.stream().findFirst().map(quantity -> dioptres(quantity, code));
    }

    private static Dioptres dioptres(Quantity quantity, String code) {
        require(quantity.hasValue(), "its " + code + " has no value");
        String unit = quantity.hasCode() ? quantity.getCode() : "";
        double factor = UnitKind.POWER
                .factor(unit)
                .orElseThrow(() -> new IllegalArgumentException(
                        "its " + code + " has the unit '" + unit + "', not " + UnitKind.POWER.accepted()));
        return Dioptres.of(quantity.getValue().doubleValue() * factor);
    }

    private static boolean consigned(Device device) {
        Extension extension = device.getExtensionByUrl(UnitDevice.CONSIGNED);
        if (extension != null && extension.getValue() instanceof BooleanType consigned) {
            return consigned.booleanValue();
        }
        throw new IllegalArgumentException("it does not say whether it is on consignment");
    }

    private static String named(Reference reference, String what) {
        String name = Shelf.name(reference);
        require(!name.isEmpty(), "it names no " + what);
        return name;
    }

    private static void require(boolean condition, String otherwise) {
        if (!condition) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
