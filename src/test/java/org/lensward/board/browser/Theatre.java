package org.lensward.board.browser;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.hl7.fhir.r4.model.Type;

/** What lies in theatre for one booking: wristband, sheet, carton, as somebody there would read them. Asks the record by its own way. */
record Theatre(IGenericClient record, String booking) {

    private static final String GS = String.valueOf((char) 0x1D);

    private Task task() {
        Bundle found = record.search()
                .byUrl("Task?identifier=https://lensward.org/fhir/sid/eye-plan|" + booking)
                .returnBundle(Bundle.class)
                .execute();
        return found.getEntry().stream()
                .map(entry -> (Task) entry.getResource())
                .filter(task -> task.getStatus() != TaskStatus.CANCELLED)
                .findFirst()
                .orElseThrow();
    }

    private Stream<Type> inputs(String code) {
        return task().getInput().stream()
                .filter(each -> each.getType().getCodingFirstRep().getCode().equals(code))
                .map(each -> each.getValue());
    }

    private Type input(String code) {
        return inputs(code).findFirst().orElseThrow();
    }

    /** The wristband's numbers, by their systems. */
    List<String> numbers() {
        Patient patient = record.read()
                .resource(Patient.class)
                .withUrl(task().getFor().getReference())
                .execute();
        return patient.getIdentifier().stream()
                .sorted(Comparator.comparing(Identifier::getSystem))
                .map(Identifier::getValue)
                .toList();
    }

    /** As the keypad wants it: day, month, year. */
    String born() {
        String[] parts = input("birth-date").primitiveValue().split("-");
        return parts[2] + parts[1] + parts[0];
    }

    String eye() {
        return ((CodeableConcept) input("eye")).getText().replace(" eye", "");
    }

    String plan() {
        return input("fingerprint").primitiveValue().substring(0, 12);
    }

    String model() {
        return ((Reference) input("lens-model")).getReference();
    }

    String power() {
        return ((Quantity) input("lens-power")).getValue().toPlainString();
    }

    /** Empty for a lens that is not toric. */
    String axis() {
        return quantity("lens-axis");
    }

    String cylinder() {
        return quantity("lens-cylinder");
    }

    private String quantity(String code) {
        return inputs(code)
                .map(each -> ((Quantity) each).getValue().toPlainString())
                .findFirst()
                .orElse("");
    }

    /** A carton of the planned lens that nobody else is to have; the first by name. */
    Device carton() {
        return cartons(true).findFirst().orElseThrow();
    }

    /** A carton of the same model in another power. */
    Device anotherPower() {
        return cartons(false).findFirst().orElseThrow();
    }

    private Stream<Device> cartons(boolean samePower) {
        String model = model();
        String power = power();
        String cylinder = cylinder();
        return record.search().byUrl("Device?_count=500").returnBundle(Bundle.class).execute().getEntry().stream()
                .map(entry -> (Device) entry.getResource())
                .filter(each -> model.equals(each.getDefinition().getReference()))
                .filter(each -> each.getExtensionString("https://lensward.org/fhir/StructureDefinition/unit-state")
                        .equals("available"))
                .filter(each ->
                        each.getExpirationDateElement().getValueAsString().compareTo("2026-12-11") > 0)
                .filter(each -> samePower
                        == (same(property(each, "lens-power"), power)
                                && same(property(each, "lens-cylinder"), cylinder)))
                .sorted(Comparator.comparing(each -> each.getIdElement().getIdPart()));
    }

    private static String property(Device carton, String code) {
        return carton.getProperty().stream()
                .filter(each -> each.getType().getCodingFirstRep().getCode().equals(code))
                .map(each -> each.getValueQuantityFirstRep().getValue().toPlainString())
                .findFirst()
                .orElse("");
    }

    private static boolean same(String one, String other) {
        return one.isEmpty() || other.isEmpty()
                ? one.equals(other)
                : Double.parseDouble(one) == Double.parseDouble(other);
    }

    /** As a scanner sends it: GS1 element string with symbology prefix. */
    static String scan(Device carton) {
        String expiry = carton.getExpirationDateElement()
                .getValueAsString()
                .substring(2, 10)
                .replace("-", "");
        return "]d201" + carton.getUdiCarrierFirstRep().getDeviceIdentifier() + "17" + expiry + "10"
                + carton.getLotNumber() + GS + "21" + carton.getSerialNumber();
    }
}
