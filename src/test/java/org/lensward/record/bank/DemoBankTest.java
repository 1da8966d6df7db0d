package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.ready;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.junit.jupiter.api.Test;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.Evidences;
import org.lensward.record.ProfileValidator;
import org.lensward.record.ReferenceTargets;
import org.lensward.record.Shelf;

/** The invented bank of the demo against the demo's own plans. */
class DemoBankTest {

    private static final Bundle BUNDLE = parse(Path.of("demo-data/lens-bank.json"));

    @Test
    void every_carton_keeps_the_profile_and_bears_the_name_that_its_label_gives() {
        assertThat(devices()).hasSizeGreaterThan(40).allSatisfy(device -> {
            assertThat(ProfileValidator.errors(device)).isEmpty();
            assertThat(ReferenceTargets.misdirected(device)).isEmpty();
            assertThat(UnitName.bySerial(read(device).identity())).contains(Shelf.name(device));
            assertThat(device.getUdiCarrierFirstRep().getDeviceIdentifier()).matches(DemoBankTest::isGtin14);
        });
    }

    /** Every lens of every demo plan is on the store's shelf and in date, but for the shortages that the demo shows. */
    @Test
    void the_bank_covers_the_day_but_for_deliberate_shortages() throws IOException {
        List<LensUnit> free = new ArrayList<>(devices().stream()
                .map(DemoBankTest::read)
                .filter(unit -> unit.state() == UnitState.AVAILABLE && unit.isInDateOn(DAY))
                .filter(unit -> unit.location().equals("Location/lens-store"))
                .toList());
        List<String> missing = new ArrayList<>();
        for (DeviceRequest request : requests()) {
            PlannedLens wanted = PlannedLens.of(request);
            Optional<LensUnit> unit = free.stream()
                    .filter(each -> PlannedLens.of(each).equals(wanted))
                    .findFirst();
            unit.ifPresentOrElse(
                    free::remove, () -> missing.add(request.getIdElement().getIdPart()));
        }

        assertThat(missing)
                .containsExactlyInAnyOrder(
                        "plan-booking-02-spare", // at the north site
                        "plan-booking-02-sulcus", // in quarantine
                        "plan-booking-03-anterior-chamber", // none
                        "plan-booking-01-anterior-chamber", // one 18 D for two eyes
                        "plan-booking-05-anterior-chamber", // one 17 D for two eyes
                        "plan-booking-11-spare"); // expires before the day
    }

    @Test
    void the_record_takes_the_bank_beside_the_lens_models() {
        BankRecord record = BankRecord.shared();
        Bundle models = parse(Path.of("demo-data/an-ordinary-eye/in.json"));
        record.client().transaction().withBundle(models).execute();
        record.client().transaction().withBundle(BUNDLE).execute();

        assertThat(ready(record.bank().units()))
                .extracting(unit -> unit.evidence().resource())
                .containsAll(devices().stream().map(Shelf::name).toList());
    }

    private static List<DeviceRequest> requests() throws IOException {
        try (Stream<Path> stories = Files.list(Path.of("demo-data"))) {
            return stories.map(story -> story.resolve("out.json"))
                    .filter(Files::exists)
                    .sorted()
                    .map(DemoBankTest::parse)
                    .flatMap(plan -> new Shelf(plan).all(DeviceRequest.class))
                    .toList();
        }
    }

    private static List<Device> devices() {
        return new Shelf(BUNDLE).all(Device.class).toList();
    }

    private static LensUnit read(Device device) {
        return ready(new UnitReader(new Evidences(BankRecord.FHIR)).read(device));
    }

    /** GS1 General Specifications 7.9: weights 3 and 1 in turn, the sum is a multiple of ten. */
    private static boolean isGtin14(String number) {
        int sum = 0;
        for (int place = 0; place < number.length(); place++) {
            sum += (number.charAt(place) - '0') * (place % 2 == 0 ? 3 : 1);
        }
        return number.length() == 14 && sum % 10 == 0;
    }

    private static Bundle parse(Path file) {
        try {
            return BankRecord.FHIR.newJsonParser().parseResource(Bundle.class, Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
