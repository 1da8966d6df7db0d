package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.UNIT_UNREADABLE;
import static org.lensward.record.bank.BankRecord.MODEL;
import static org.lensward.record.bank.BankRecord.carton;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Device.FHIRDeviceStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Evidences;

/** A carton is read whole or not at all. */
class UnitReaderTest {

    private final UnitReader reader = new UnitReader(new Evidences(BankRecord.FHIR));

    /** What is wrong, and the words of the finding. */
    record Fault(String words, Consumer<Device> done) {}

    static Stream<Named<Fault>> faults() {
        return Stream.of(
                        new Fault("no intraocular lens", device -> device.setType(null)),
                        new Fault("state 'lost' is not known", device -> state(device, "lost")),
                        new Fault("state '' is not known", device -> device.getExtension()
                                .clear()),
                        new Fault("status contradicts", device -> device.setStatus(FHIRDeviceStatus.INACTIVE)),
                        new Fault("status contradicts", device -> device.setStatus(FHIRDeviceStatus.ENTEREDINERROR)),
                        new Fault("names no lens model", device -> device.setDefinition(null)),
                        new Fault("no power", device -> device.getProperty().clear()),
                        new Fault(
                                "more than one lens-power",
                                device -> device.addProperty(
                                        device.getPropertyFirstRep().copy())),
                        new Fault("has no value", device -> power(device).setValue(null)),
                        new Fault("the unit 'mm'", device -> power(device).setCode("mm")),
                        new Fault("the unit ''", device -> power(device).setCode(null)),
                        new Fault("device identifier", device -> device.getUdiCarrier()
                                .clear()),
                        new Fault("device identifier", device -> device.addUdiCarrier()
                                .setDeviceIdentifier("09521234000020")),
                        new Fault("neither lot nor serial", device -> device.setLotNumber(null)
                                .setSerialNumber(null)),
                        new Fault("no day of expiry", device -> device.setExpirationDate(null)),
                        new Fault(
                                "no day of expiry",
                                device -> device.setExpirationDateElement(new DateTimeType("2028-03"))),
                        new Fault("names no location", device -> device.setLocation(null)),
                        new Fault("names no owner", device -> device.setOwner(null)),
                        new Fault("consignment", device -> device.getExtensionByUrl(UnitDevice.CONSIGNED)
                                .setValue(new StringType("no"))),
                        new Fault("is held for a booking", device -> state(device, "reserved")),
                        new Fault(
                                "is held for none",
                                device -> device.addExtension(UnitDevice.HELD_FOR, new Reference("ServiceRequest/b1"))))
                .map(fault -> Named.of(fault.words(), fault));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void a_carton_that_cannot_be_read_whole_is_left_out(Fault fault) {
        Device device = device();
        fault.done().accept(device);

        assertThat(reader.read(device)).satisfies(outcome -> {
            assertThat(outcome.value()).isEmpty();
            assertThat(outcome.findings()).singleElement().satisfies(finding -> {
                assertThat(finding.code()).isEqualTo(UNIT_UNREADABLE);
                assertThat(finding.message()).contains(fault.words());
            });
        });
    }

    @Test
    void a_whole_carton_is_read_as_it_is_labelled() {
        LensUnit unit = reader.read(device()).value().orElseThrow();

        assertThat(unit.model()).isEqualTo(MODEL);
        assertThat(unit.power()).isEqualTo(Dioptres.of(21.5));
        assertThat(unit.cylinder()).isEmpty();
        assertThat(unit.identity()).isEqualTo(carton("L", "S").identity());
        assertThat(unit.location()).isEqualTo("Location/store");
        assertThat(unit.owner()).isEqualTo(new Owner("Organization/hospital", false));
        assertThat(unit.state()).isEqualTo(UnitState.AVAILABLE);
        assertThat(unit.heldFor()).isEmpty();
    }

    @Test
    void a_cylinder_and_a_negative_power_are_read_with_their_signs() {
        Delivery given = carton("L", "S");
        Device device = UnitDevice.of(
                "Device/unit-1",
                new Delivery(
                        given.model(),
                        Dioptres.of(-2.5),
                        Optional.of(Dioptres.of(2.25)),
                        given.identity(),
                        Optional.empty(),
                        given.location(),
                        new Owner("Organization/supplier", true),
                        given.day()),
                "Harbour 60");

        LensUnit unit = reader.read(device).value().orElseThrow();
        assertThat(unit.power()).isEqualTo(Dioptres.of(-2.5));
        assertThat(unit.cylinder()).contains(Dioptres.of(2.25));
        assertThat(unit.owner().consigned()).isTrue();
        assertThat(device.getUdiCarrierFirstRep().hasCarrierHRF()).isFalse();
    }

    @Test
    void of_many_each_good_one_is_read_and_each_bad_one_is_named() {
        Device bad = device().setLocation(null);
        Device mistaken = device().setStatus(FHIRDeviceStatus.ENTEREDINERROR);

        Outcome<List<LensUnit>> read = reader.readAll(Stream.of(device(), bad, mistaken));

        assertThat(read.value().orElseThrow()).hasSize(1);
        assertThat(read.findings()).extracting(Finding::code).containsExactly(UNIT_UNREADABLE);
    }

    private static Device device() {
        return UnitDevice.of("Device/unit-1", carton("L", "S"), "Harbour 60");
    }

    private static void state(Device device, String state) {
        device.getExtensionByUrl(UnitDevice.STATE).setValue(new CodeType(state));
    }

    private static Quantity power(Device device) {
        return device.getPropertyFirstRep().getValueQuantity().get(0);
    }
}
