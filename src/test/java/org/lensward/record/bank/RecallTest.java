package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.BANK_INCOMPLETE;
import static org.lensward.finding.FindingCode.RECALL_LOT_UNRECORDED;
import static org.lensward.finding.FindingCode.RECALL_PATIENTS_DIFFER;
import static org.lensward.finding.FindingCode.RECALL_PATIENT_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_UNREADABLE;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.carton;
import static org.lensward.record.bank.BankRecord.name;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.Shelf;

/** A recall on a real FHIR server, by either way of finding the cartons: complete across pages and parts. */
class RecallTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    /** More than two pages of 500. */
    @Test
    void a_recall_among_twelve_hundred_cartons_misses_none() {
        List<Device> many = new ArrayList<>();
        for (int each = 0; each < 1_200; each++) {
            String lot = each % 100 == 7 ? "RECALLED" : "FINE-" + each;
            Delivery delivery = carton(lot, "many-" + each);
            many.add(UnitDevice.of(UnitName.bySerial(delivery.identity()).orElseThrow(), delivery, "harbour-60"));
        }
        for (int from = 0; from < many.size(); from += 200) {
            RECORD.put(many.subList(from, from + 200).toArray(Resource[]::new));
        }

        for (Lookup lookup : Lookup.values()) {
            Recall recall = BANK.recall(new RecalledLot("recalled", Optional.empty()), lookup);
            assertThat(recall.units().stream().filter(each -> each.unit()
                            .flatMap(unit -> unit.identity().lot())
                            .isPresent()))
                    .as(lookup.name())
                    .hasSize(12);
        }
        List<Device> whole =
                WholeBank.read(RECORD.door(), WholeBank.PART).value().orElseThrow();
        Outcome<List<Device>> parts = WholeBank.read(new ShortDoor(RECORD.door(), 300), 300);
        List<Device> inParts = parts.value().orElseThrow();
        assertThat(inParts).extracting(Shelf::name).doesNotHaveDuplicates();
        assertThat(inParts)
                .extracting(Shelf::name)
                .containsExactlyInAnyOrderElementsOf(
                        whole.stream().map(Shelf::name).toList())
                .hasSizeGreaterThanOrEqualTo(1_200);
        assertThat(parts.findings()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void a_recall_says_where_each_carton_is_for_whom_and_in_whom(Lookup lookup) {
        String lot = "SPREAD-" + lookup;
        LensUnit shelf = RECORD.received(lot, lot + "-shelf");
        LensUnit reserved = RECORD.received(lot, lot + "-reserved");
        LensUnit implanted = RECORD.received(lot, lot + "-implanted");
        LensUnit broken = RECORD.received(lot, lot + "-broken");
        String booking = RECORD.book("recall-" + lookup.ordinal());
        BANK.move(name(reserved), new Movement.Reserve(booking, DAY), CLERK);
        worn(implanted, booking);
        Device halfSaid = RECORD.read(Device.class, name(broken));
        halfSaid.getProperty().clear();
        RECORD.put(halfSaid);

        Recall recall = BANK.recall(new RecalledLot(lot, Optional.of("09521234000013")), lookup);

        List<String> ours = List.of(name(shelf), name(reserved), name(implanted), name(broken));
        assertThat(recall.units())
                .extracting(each -> each.evidence().resource())
                .containsAll(ours);
        assertThat(recall.usable().filter(unit -> ours.contains(unit.evidence().resource())))
                .extracting(LensUnit::heldFor)
                .containsExactlyInAnyOrder(Optional.empty(), Optional.of(booking));
        assertThat(recall.implanted().filter(each -> each.evidence().resource().equals(name(implanted))))
                .singleElement()
                .satisfies(each -> assertThat(each.patients()).containsExactly("Patient/recall-" + lookup.ordinal()));
        assertThat(recall.findings())
                .filteredOn(finding -> finding.evidence().get(0).resource().equals(name(broken)))
                .extracting(Finding::code)
                .containsExactly(UNIT_UNREADABLE);
        assertThat(recall).asString().doesNotContain("Patient/");
    }

    @Test
    void a_recall_puts_in_quarantine_whatever_can_still_be_used() {
        LensUnit shelf = RECORD.received("PULL", "pull-1");
        LensUnit reserved = RECORD.received("PULL", "pull-2");
        BANK.move(name(reserved), new Movement.Reserve(RECORD.book("pull"), DAY), CLERK);
        Recall recall = BANK.recall(new RecalledLot("PULL", Optional.empty()), Lookup.INDEXED);

        assertThat(BANK.quarantine(recall, "Recall 7", CLERK)).hasSize(2).allMatch(each -> each.value()
                .isPresent());
        assertThat(RECORD.state(shelf)).isEqualTo(UnitState.QUARANTINED);
        assertThat(RECORD.state(reserved)).isEqualTo(UnitState.QUARANTINED);
    }

    @Test
    void what_the_record_leaves_open_is_said_and_nothing_escapes() {
        Device lotless = BankRecord.named(
                UnitDevice.of("Device/lotless", carton("gone", "lotless"), "harbour-60")
                        .setLotNumber(null),
                "lotless");
        Device nobodys = UnitDevice.of("Device/nobodys", carton("OPEN", "nobodys"), "harbour-60");
        nobodys.getExtensionByUrl(UnitDevice.STATE).setValue(new CodeType("implanted"));
        nobodys.addExtension(UnitDevice.HELD_FOR, new Reference(RECORD.book("nobodys")));
        LensUnit twoSay = RECORD.received("OPEN", "two-say");
        worn(twoSay, RECORD.book("first"));
        RECORD.put(lotless, nobodys, BankRecord.named(new Patient(), "second"));
        RECORD.put(use("second-use", name(twoSay), "Patient/second"));

        Recall recall = BANK.recall(new RecalledLot("OPEN", Optional.empty()), Lookup.WHOLE_BANK);

        assertThat(about(recall, "Device/lotless")).contains(RECALL_LOT_UNRECORDED);
        assertThat(about(recall, "Device/nobodys")).containsExactly(RECALL_PATIENT_UNKNOWN);
        assertThat(about(recall, name(twoSay))).containsExactly(RECALL_PATIENTS_DIFFER);
        Recall indexed = BANK.recall(new RecalledLot("OPEN", Optional.empty()), Lookup.INDEXED);
        assertThat(about(indexed, "Device/lotless")).contains(RECALL_LOT_UNRECORDED);
    }

    @Test
    void an_answer_shorter_than_the_record_counts_is_said_to_be_incomplete() {
        RECORD.received("SHORT", "short-1");
        RECORD.received("SHORT", "short-2");
        ShortDoor door = new ShortDoor(RECORD.door(), 1);

        for (Lookup lookup : Lookup.values()) {
            Recall recall =
                    new LensBank(BankRecord.FHIR, door).recall(new RecalledLot("SHORT", Optional.empty()), lookup);
            assertThat(recall.findings()).extracting(Finding::code).contains(BANK_INCOMPLETE);
        }
        assertThat(new LensBank(BankRecord.FHIR, door).units().findings())
                .extracting(Finding::code)
                .contains(BANK_INCOMPLETE);
        assertThat(BANK.units().findings()).extracting(Finding::code).doesNotContain(BANK_INCOMPLETE);
    }

    /** The real door, behind which a long search ends early without a word. */
    private record ShortDoor(RecordDoor door, int longest) implements RecordDoor {

        @Override
        public Bundle gather(List<String> questions) {
            Bundle all = door.gather(questions);
            all.setEntry(new ArrayList<>(
                    all.getEntry().subList(0, Math.min(longest, all.getEntry().size()))));
            return all;
        }

        @Override
        public int count(String search) {
            return door.count(search);
        }

        @Override
        public Optional<Bundle> transact(Bundle transaction) {
            return door.transact(transaction);
        }
    }

    private static List<FindingCode> about(Recall recall, String name) {
        return recall.findings().stream()
                .filter(finding -> finding.evidence().get(0).resource().equals(name))
                .map(Finding::code)
                .toList();
    }

    /** The lens in the patient of that booking, as another system would have recorded it. */
    private static void worn(LensUnit unit, String booking) {
        Device device = RECORD.read(Device.class, name(unit));
        device.getExtensionByUrl(UnitDevice.STATE).setValue(new CodeType("implanted"));
        device.addExtension(UnitDevice.HELD_FOR, new Reference(booking));
        String patient = booking.replace("ServiceRequest", "Patient");
        RECORD.put(device, use("use-" + device.getIdElement().getIdPart(), name(unit), patient));
    }

    private static DeviceUseStatement use(String id, String device, String patient) {
        return BankRecord.named(
                new DeviceUseStatement()
                        .setStatus(DeviceUseStatementStatus.ACTIVE)
                        .setSubject(new Reference(patient))
                        .setDevice(new Reference(device)),
                id);
    }
}
