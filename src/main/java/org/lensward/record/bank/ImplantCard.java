package org.lensward.record.bank;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BaseDateTimeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Device.DeviceUdiCarrierComponent;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.lens.label.HumanReadable;
import org.lensward.lens.stock.LensUnit;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;

/**
 * What the patient's implant card says: Regulation (EU) 2017/745, article 18, asks for the device's identification, lot, serial number, UDI
 * and model; date, patient and hospital are what the hospital adds (value from memory). A view of the Device and the Procedure, not a
 * document of its own: a second copy of lot and serial number could only come to differ from the first.
 *
 * @param patient such as {@code Patient/p1}; whoever prints the card adds the name
 * @param eye in words
 * @param day of the implantation
 * @param hospital where
 * @param model name of the lens model
 * @param power as labelled
 * @param cylinder as labelled, for a toric lens
 * @param lot batch, where it has one
 * @param serial number of the lens, where it has one
 * @param udi the whole identifier as printed for people, else the device identifier
 */
public record ImplantCard(
        String patient,
        String eye,
        LocalDate day,
        String hospital,
        String model,
        Dioptres power,
        Optional<Dioptres> cylinder,
        Optional<String> lot,
        Optional<String> serial,
        String udi) {

    /** The card of a completed operation. */
    static ImplantCard of(Procedure operation, Device device, LensUnit unit) {
        return new ImplantCard(
                Shelf.name(operation.getSubject()),
                Codes.words(operation.getBodySiteFirstRep()),
                day(operation),
                hospital(operation),
                UnitDevice.modelName(device),
                unit.power(),
                unit.cylinder(),
                unit.identity().lot(),
                unit.identity().serial(),
                device.getUdiCarrier().stream()
                        .filter(DeviceUdiCarrierComponent::hasCarrierHRF)
                        .map(DeviceUdiCarrierComponent::getCarrierHRF)
                        .findFirst()
                        .flatMap(HumanReadable::of)
                        .orElse(unit.identity().device()));
    }

    private static LocalDate day(Procedure operation) {
        String written = ((BaseDateTimeType) operation.getPerformed()).getValueAsString();
        return LocalDate.parse(written.substring(0, 10));
    }

    private static String hospital(Procedure operation) {
        Reference hospital = operation.getPerformerFirstRep().getOnBehalfOf();
        return Stream.of(hospital.getDisplay(), hospital.getReference())
                .filter(text -> text != null)
                .findFirst()
                .orElse("");
    }

    /** Names neither patient nor lens: a serial number leads to the patient. */
    @Override
    public String toString() {
        return "ImplantCard";
    }
}
