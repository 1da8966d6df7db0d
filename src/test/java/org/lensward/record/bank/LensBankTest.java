package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.RECALL_LOT_UNRECORDED;
import static org.lensward.finding.FindingCode.RECALL_PATIENTS_DIFFER;
import static org.lensward.finding.FindingCode.RECALL_PATIENT_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_ALREADY_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_EXPIRED;
import static org.lensward.finding.FindingCode.UNIT_HELD_FOR_ANOTHER;
import static org.lensward.finding.FindingCode.UNIT_LABEL_INCOMPLETE;
import static org.lensward.finding.FindingCode.UNIT_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_UNREADABLE;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.EXPIRY;
import static org.lensward.record.bank.BankRecord.MODEL;
import static org.lensward.record.bank.BankRecord.carton;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

/** The bank on a real FHIR server. Optimistic locking as HL7 FHIR R4 (4.0.1), RESTful API 3.1.0.5, has it. */
class LensBankTest {

    private static final int RACES = 200;

    private static BankRecord record;

    @BeforeAll
    static void start() {
        record = new BankRecord();
    }

    @AfterAll
    static void stop() {
        record.close();
    }

    @Test
    void a_carton_taken_in_is_read_back_as_it_was_labelled_and_keeps_the_profile() {
        LensUnit unit = received("L-1", "in-1");

        assertThat(bank().unit(name(unit)).value()).contains(unit);
        assertThat(unit.state()).isEqualTo(UnitState.AVAILABLE);
        assertThat(unit.evidence().version()).isEqualTo("1");
        assertThat(ProfileValidator.errors(record.read(Device.class, name(unit)))).isEmpty();
    }

    @Test
    void a_serial_number_taken_in_twice_is_one_carton_and_keeps_its_reservation() {
        LensUnit unit = received("L-1", "in-2");
        String booking = record.book("twice");
        bank().move(name(unit), new Movement.Reserve(booking, DAY), CLERK);

        assertThat(codes(bank().receive(carton("L-1", "in-2"), CLERK))).containsExactly(UNIT_ALREADY_IN_BANK);
        assertThat(state(unit)).isEqualTo(UnitState.RESERVED);
    }

    /** Two who take it in at once both see that it is not there yet. */
    @Test
    void goods_in_raced_by_two_never_overwrites_what_happened_since() {
        LensUnit unit = received("L-1", "in-3");
        Device again = UnitDevice.of(name(unit), carton("L-1", "in-3"), "harbour-60");
        bank().move(name(unit), new Movement.Quarantine("dented"), CLERK);

        Outcome<LensUnit> late = new UnitMover(record.door(), reader()).create(again, DAY, CLERK);

        assertThat(codes(late)).containsExactly(UNIT_MOVED_MEANWHILE);
        assertThat(state(unit)).isEqualTo(UnitState.QUARANTINED);
    }

    @Test
    void cartons_without_a_serial_number_are_counted() {
        LensUnit.Identity label = new LensUnit.Identity("09999999000026", Optional.of("N-1"), Optional.empty(), EXPIRY);
        List<String> names = IntStream.range(0, 3)
                .mapToObj(each -> ready(bank().receive(carton(MODEL, 20, label), CLERK)))
                .map(LensBankTest::name)
                .toList();

        assertThat(names).doesNotHaveDuplicates().hasSize(3);
        assertThat(bank().recall(new RecalledLot("N-1", Optional.of("09999999000026")), Lookup.WHOLE_BANK)
                        .units())
                .hasSize(3);
    }

    @Test
    void a_carton_that_cannot_be_told_or_used_is_not_taken_in() {
        LensUnit.Identity bare = new LensUnit.Identity("09999999000019", Optional.empty(), Optional.empty(), EXPIRY);
        LensUnit.Identity old = new LensUnit.Identity(
                "09999999000019", Optional.of("L-1"), Optional.of("old"), java.time.LocalDate.of(2026, 11, 30));

        assertThat(codes(bank().receive(carton(MODEL, 20, bare), CLERK))).containsExactly(UNIT_LABEL_INCOMPLETE);
        assertThat(codes(bank().receive(carton(MODEL, 20, old), CLERK))).containsExactly(UNIT_EXPIRED);
        LensUnit.Identity good = carton("L-1", "unknown-model").identity();
        assertThat(codes(bank().receive(carton("DeviceDefinition/nobody", 20, good), CLERK)))
                .containsExactly(UNIT_MODEL_UNKNOWN);
        assertThat(codes(bank().unit("Device/nothing"))).containsExactly(UNIT_NOT_IN_BANK);
    }

    @Test
    void each_movement_leaves_a_trail_of_who_when_why_and_from_which_version() {
        LensUnit unit = received("L-2", "trail");
        String booking = record.book("trail");
        bank().move(name(unit), new Movement.Reserve(booking, DAY), CLERK);
        bank().move(name(unit), new Movement.Quarantine("dented"), CLERK);

        List<Provenance> trail = record.search("Provenance?target=" + name(unit)).stream()
                .map(Provenance.class::cast)
                .sorted(java.util.Comparator.comparing(each -> each.getIdElement().getIdPartAsLong()))
                .toList();

        assertThat(trail)
                .extracting(each -> each.getActivity().getCodingFirstRep().getCode())
                .containsExactly("goods-in", "reserve", "quarantine");
        assertThat(trail).allSatisfy(each -> {
            assertThat(ProfileValidator.errors(each)).isEmpty();
            assertThat(each.getAgentFirstRep().getWho().getDisplay()).isEqualTo("A clerk");
            assertThat(each.getRecorded().toInstant()).isEqualTo(CLERK.at());
        });
        assertThat(trail.get(1).getEntity())
                .extracting(entity -> entity.getWhat().getReference())
                .containsExactly(name(unit) + "/_history/1", booking);
        assertThat(trail.get(2).getReasonFirstRep().getText()).isEqualTo("dented");
    }

    @Test
    void a_step_done_twice_is_written_once() {
        LensUnit unit = received("L-2", "once");
        String booking = record.book("once");
        LensUnit once = ready(bank().move(name(unit), new Movement.Reserve(booking, DAY), CLERK));
        LensUnit twice = ready(bank().move(name(unit), new Movement.Reserve(booking, DAY), CLERK));

        assertThat(twice).isEqualTo(once);
        assertThat(record.read(Device.class, name(unit)).getMeta().getVersionId())
                .isEqualTo("2");
    }

    @Test
    void what_the_bank_does_not_know_of_a_device_is_kept() {
        LensUnit unit = received("L-2", "note");
        Device device = record.read(Device.class, name(unit));
        device.addNote().setText("Label of the supplier on the back");
        record.put(device);
        bank().move(name(unit), new Movement.Quarantine("dented"), CLERK);

        Device after = record.read(Device.class, name(unit));
        assertThat(after.getNoteFirstRep().getText()).startsWith("Label");
        assertThat(after.getStatus()).isEqualTo(Device.FHIRDeviceStatus.INACTIVE);
    }

    @Test
    void two_hundred_races_for_one_carton_have_two_hundred_winners() throws Exception {
        String one = record.book("one");
        String other = record.book("other");
        List<String> cartons = IntStream.range(0, RACES)
                .mapToObj(race -> name(received("RACE", "race-" + race)))
                .toList();
        ExecutorService clerks = Executors.newFixedThreadPool(2);
        CyclicBarrier start = new CyclicBarrier(2);
        int overtaken = 0;
        try {
            for (String carton : cartons) {
                Future<Outcome<LensUnit>> first = clerks.submit(reserve(carton, one, start));
                Future<Outcome<LensUnit>> second = clerks.submit(reserve(carton, other, start));
                boolean oneWon = first.get().value().isPresent();
                assertThat(second.get().value().isPresent()).isEqualTo(!oneWon);
                List<FindingCode> told = codes(oneWon ? second.get() : first.get());
                assertThat(told).isSubsetOf(UNIT_MOVED_MEANWHILE, UNIT_HELD_FOR_ANOTHER);
                overtaken += told.contains(UNIT_MOVED_MEANWHILE) ? 1 : 0;
                assertThat(ready(bank().unit(carton)).heldFor()).contains(oneWon ? one : other);
            }
        } finally {
            clerks.shutdownNow();
        }
        assertThat(overtaken).as("races that the version decided").isPositive();
        assertThat(ready(bank().heldFor(one)).size() + ready(bank().heldFor(other)).size()).isEqualTo(RACES);
        assertThat(record.search("Provenance?entity=" + one).size()
                        + record.search("Provenance?entity=" + other).size())
                .as("what lost left no trail")
                .isEqualTo(RACES);
    }

    private static Callable<Outcome<LensUnit>> reserve(String carton, String booking, CyclicBarrier start) {
        return () -> {
            start.await();
            return bank().move(carton, new Movement.Reserve(booking, DAY), CLERK);
        };
    }

    /** More than two pages of 500. */
    @Test
    void a_recall_among_twelve_hundred_cartons_misses_none() {
        List<Device> many = new ArrayList<>();
        for (int each = 0; each < 1_200; each++) {
            String lot = each % 100 == 7 ? "RECALLED" : "FINE-" + each;
            Delivery delivery = carton(lot, "many-" + each);
            many.add(UnitDevice.of(UnitName.bySerial(delivery.identity()).orElseThrow(), delivery, "harbour-60"));
        }
        for (int from = 0; from < many.size(); from += 400) {
            record.put(many.subList(from, from + 400).toArray(Resource[]::new));
        }

        for (Lookup lookup : Lookup.values()) {
            Recall recall = bank().recall(new RecalledLot("recalled", Optional.empty()), lookup);
            assertThat(recall.units().stream().filter(each -> each.unit().flatMap(unit -> unit.identity().lot()).isPresent()))
                    .as(lookup.name())
                    .hasSize(12);
        }
        List<Device> whole = WholeBank.read(record.door(), WholeBank.PART).value().orElseThrow();
        List<Device> inParts = WholeBank.read(record.door(), 150).value().orElseThrow();
        assertThat(inParts).extracting(Shelf::name).doesNotHaveDuplicates();
        assertThat(inParts)
                .extracting(Shelf::name)
                .containsExactlyInAnyOrderElementsOf(
                        whole.stream().map(Shelf::name).toList())
                .hasSizeGreaterThanOrEqualTo(1_200);
        assertThat(WholeBank.read(record.door(), 150).findings()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void a_recall_says_where_each_carton_is_for_whom_and_in_whom(Lookup lookup) {
        String lot = "SPREAD-" + lookup;
        LensUnit shelf = received(lot, lot + "-shelf");
        LensUnit reserved = received(lot, lot + "-reserved");
        LensUnit implanted = received(lot, lot + "-implanted");
        LensUnit broken = received(lot, lot + "-broken");
        String booking = record.book("recall-" + lookup.ordinal());
        bank().move(name(reserved), new Movement.Reserve(booking, DAY), CLERK);
        worn(implanted, booking);
        Device halfSaid = record.read(Device.class, name(broken));
        halfSaid.getProperty().clear();
        record.put(halfSaid);

        Recall recall = bank().recall(new RecalledLot(lot, Optional.of("09999999000019")), lookup);

        List<String> ours = List.of(name(shelf), name(reserved), name(implanted), name(broken));
        assertThat(recall.units()).extracting(each -> each.evidence().resource()).containsAll(ours);
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
        LensUnit shelf = received("PULL", "pull-1");
        LensUnit reserved = received("PULL", "pull-2");
        bank().move(name(reserved), new Movement.Reserve(record.book("pull"), DAY), CLERK);
        Recall recall = bank().recall(new RecalledLot("PULL", Optional.empty()), Lookup.INDEXED);
        Recall ours = new Recall(
                "PULL",
                recall.units().stream()
                        .filter(each -> each.unit().flatMap(unit -> unit.identity().lot()).isPresent())
                        .toList(),
                List.of());

        assertThat(bank().quarantine(ours, "Recall 7", CLERK)).hasSize(2).allMatch(each -> each.value().isPresent());
        assertThat(state(shelf)).isEqualTo(UnitState.QUARANTINED);
        assertThat(state(reserved)).isEqualTo(UnitState.QUARANTINED);
    }

    @Test
    void what_the_record_leaves_open_is_said_and_nothing_escapes() {
        Device lotless = BankRecord.named(
                UnitDevice.of("Device/lotless", carton("gone", "lotless"), "harbour-60").setLotNumber(null), "lotless");
        Device nobodys = UnitDevice.of("Device/nobodys", carton("OPEN", "nobodys"), "harbour-60");
        nobodys.getExtensionByUrl(UnitDevice.STATE).setValue(new CodeType("implanted"));
        nobodys.addExtension(UnitDevice.HELD_FOR, new Reference(record.book("nobodys")));
        LensUnit twoSay = received("OPEN", "two-say");
        worn(twoSay, record.book("first"));
        record.put(lotless, nobodys, BankRecord.named(new Patient(), "second"));
        record.put(use("second-use", name(twoSay), "Patient/second"));

        Recall recall = bank().recall(new RecalledLot("OPEN", Optional.empty()), Lookup.WHOLE_BANK);

        assertThat(about(recall, "Device/lotless")).contains(RECALL_LOT_UNRECORDED);
        assertThat(about(recall, "Device/nobodys")).containsExactly(RECALL_PATIENT_UNKNOWN);
        assertThat(about(recall, name(twoSay))).containsExactly(RECALL_PATIENTS_DIFFER);
        Recall indexed = bank().recall(new RecalledLot("OPEN", Optional.empty()), Lookup.INDEXED);
        assertThat(about(indexed, "Device/lotless")).contains(RECALL_LOT_UNRECORDED);
    }

    private static List<FindingCode> about(Recall recall, String name) {
        return recall.findings().stream()
                .filter(finding -> finding.evidence().get(0).resource().equals(name))
                .map(Finding::code)
                .toList();
    }

    /** The lens in the patient of that booking, as another system would have recorded it. */
    private static void worn(LensUnit unit, String booking) {
        Device device = record.read(Device.class, name(unit));
        device.getExtensionByUrl(UnitDevice.STATE).setValue(new CodeType("implanted"));
        device.addExtension(UnitDevice.HELD_FOR, new Reference(booking));
        String patient = booking.replace("ServiceRequest", "Patient");
        record.put(device, use("use-" + device.getIdElement().getIdPart(), name(unit), patient));
    }

    private static DeviceUseStatement use(String id, String device, String patient) {
        return BankRecord.named(
                new DeviceUseStatement()
                        .setStatus(DeviceUseStatementStatus.ACTIVE)
                        .setSubject(new Reference(patient))
                        .setDevice(new Reference(device)),
                id);
    }

    private static LensBank bank() {
        return record.bank();
    }

    private static UnitReader reader() {
        return new UnitReader(new org.lensward.record.Evidences(BankRecord.FHIR));
    }

    private static LensUnit received(String lot, String serial) {
        return ready(bank().receive(carton(lot, serial), CLERK));
    }

    private static UnitState state(LensUnit unit) {
        return ready(bank().unit(name(unit))).state();
    }

    private static String name(LensUnit unit) {
        return unit.evidence().resource();
    }

    private static <T> T ready(Outcome<T> outcome) {
        return outcome.value().orElseThrow(() -> new AssertionError(outcome.findings()));
    }

    private static List<FindingCode> codes(Outcome<?> outcome) {
        return outcome.findings().stream().map(Finding::code).toList();
    }
}
