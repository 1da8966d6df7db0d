package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lensward.finding.FindingCode.UNIT_ALREADY_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_EXPIRED;
import static org.lensward.finding.FindingCode.UNIT_LABEL_INCOMPLETE;
import static org.lensward.finding.FindingCode.UNIT_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_NOT_MADE;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.EXPIRY;
import static org.lensward.record.bank.BankRecord.MODEL;
import static org.lensward.record.bank.BankRecord.carton;
import static org.lensward.record.bank.BankRecord.codes;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Evidences;
import org.lensward.record.ProfileValidator;

/** The bank on a real FHIR server: what goes in, what it becomes, what trail it leaves. */
class LensBankTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    @Test
    void a_carton_taken_in_is_read_back_as_it_was_labelled_and_keeps_the_profile() {
        LensUnit unit = RECORD.received("L-1", "in-1");

        assertThat(BANK.unit(name(unit)).value()).contains(unit);
        assertThat(unit.state()).isEqualTo(UnitState.AVAILABLE);
        assertThat(unit.evidence().version()).isEqualTo("1");
        assertThat(ProfileValidator.errors(RECORD.read(Device.class, name(unit))))
                .isEmpty();
    }

    @Test
    void a_serial_number_taken_in_twice_is_one_carton_and_keeps_its_reservation() {
        LensUnit unit = RECORD.received("L-1", "in-2");
        String booking = RECORD.book("twice");
        BANK.move(name(unit), new Movement.Reserve(booking, DAY), CLERK);

        assertThat(codes(BANK.receive(carton("L-1", "in-2"), CLERK))).containsExactly(UNIT_ALREADY_IN_BANK);
        assertThat(RECORD.state(unit)).isEqualTo(UnitState.RESERVED);
    }

    /** Two who take it in at once both see that it is not there yet. */
    @Test
    void goods_in_raced_by_two_never_overwrites_what_happened_since() {
        LensUnit unit = RECORD.received("L-1", "in-3");
        Device again = UnitDevice.of(name(unit), carton("L-1", "in-3"), "harbour-60");
        BANK.move(name(unit), new Movement.Quarantine("dented"), CLERK);

        Outcome<LensUnit> late = new UnitMover(RECORD.door(), reader()).create(again, DAY, CLERK);

        assertThat(codes(late)).containsExactly(UNIT_MOVED_MEANWHILE);
        assertThat(RECORD.state(unit)).isEqualTo(UnitState.QUARANTINED);
    }

    @Test
    void cartons_without_a_serial_number_are_counted() {
        LensUnit.Identity label = new LensUnit.Identity("09521234000020", Optional.of("N-1"), Optional.empty(), EXPIRY);
        List<String> names = IntStream.range(0, 3)
                .mapToObj(each -> ready(BANK.receive(carton(MODEL, 20, label), CLERK)))
                .map(BankRecord::name)
                .toList();

        assertThat(names).doesNotHaveDuplicates().hasSize(3);
        assertThat(BANK.recall(new RecalledLot("N-1", Optional.of("09521234000020")), Lookup.WHOLE_BANK)
                        .units())
                .hasSize(3);
    }

    @Test
    void a_carton_that_cannot_be_told_or_used_is_not_taken_in() {
        LensUnit.Identity bare = new LensUnit.Identity("09521234000013", Optional.empty(), Optional.empty(), EXPIRY);
        LensUnit.Identity old = new LensUnit.Identity(
                "09521234000013", Optional.of("L-1"), Optional.of("old"), LocalDate.of(2026, 11, 30));

        assertThat(codes(BANK.receive(carton(MODEL, 20, bare), CLERK))).containsExactly(UNIT_LABEL_INCOMPLETE);
        assertThat(codes(BANK.receive(carton(MODEL, 20, old), CLERK))).containsExactly(UNIT_EXPIRED);
        LensUnit.Identity good = carton("L-1", "unknown-model").identity();
        assertThat(codes(BANK.receive(carton("DeviceDefinition/nobody", 20, good), CLERK)))
                .containsExactly(UNIT_MODEL_UNKNOWN);
        assertThat(codes(BANK.unit("Device/nothing"))).containsExactly(UNIT_NOT_IN_BANK);
        assertThat(codes(BANK.unit("Patient?_count=500"))).containsExactly(UNIT_NOT_IN_BANK);
        assertThatThrownBy(() -> BANK.heldFor("ServiceRequest/b1&_count=1"))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The worked model of our profiles is made from 6 D to 30 D in half dioptres, without cylinder. */
    @ParameterizedTest
    @CsvSource({"21.5,, true", "21.75,, false", "-21.5,, false", "21.5, 2.25, false"})
    void a_power_that_the_model_is_not_made_in_is_refused(double power, @Nullable Double cylinder, boolean taken)
            throws IOException {
        Resource model = (Resource) BankRecord.FHIR
                .newJsonParser()
                .parseResource(Files.readString(Path.of("fhir-profiles/examples/intraocular-lens-model.json")));
        RECORD.put(model);
        Delivery given = carton("MADE", "made-" + power + cylinder);
        Delivery delivery = new Delivery(
                "DeviceDefinition/intraocular-lens-model",
                Dioptres.of(power),
                Optional.ofNullable(cylinder).map(Dioptres::of),
                given.identity(),
                given.barcode(),
                given.location(),
                given.owner(),
                given.day());

        assertThat(codes(BANK.receive(delivery, CLERK))).isEqualTo(taken ? List.of() : List.of(UNIT_NOT_MADE));
    }

    @Test
    void each_movement_leaves_a_trail_of_who_when_why_and_from_which_version() {
        LensUnit unit = RECORD.received("L-2", "trail");
        String booking = RECORD.book("trail");
        BANK.move(name(unit), new Movement.Reserve(booking, DAY), CLERK);
        BANK.move(name(unit), new Movement.Quarantine("dented"), CLERK);

        List<Provenance> trail = RECORD.search("Provenance?target=" + name(unit)).stream()
                .map(Provenance.class::cast)
                .sorted(Comparator.comparing(each -> each.getIdElement().getIdPartAsLong()))
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
        LensUnit unit = RECORD.received("L-2", "once");
        String booking = RECORD.book("once");
        LensUnit once = ready(BANK.move(name(unit), new Movement.Reserve(booking, DAY), CLERK));
        LensUnit twice = ready(BANK.move(name(unit), new Movement.Reserve(booking, DAY), CLERK));

        assertThat(twice).isEqualTo(once);
        assertThat(RECORD.read(Device.class, name(unit)).getMeta().getVersionId())
                .isEqualTo("2");
    }

    @Test
    void what_the_bank_does_not_know_of_a_device_is_kept() {
        LensUnit unit = RECORD.received("L-2", "note");
        Device device = RECORD.read(Device.class, name(unit));
        device.addNote().setText("Label of the supplier on the back");
        RECORD.put(device);
        BANK.move(name(unit), new Movement.Quarantine("dented"), CLERK);

        Device after = RECORD.read(Device.class, name(unit));
        assertThat(after.getNoteFirstRep().getText()).startsWith("Label");
        assertThat(after.getStatus()).isEqualTo(Device.FHIRDeviceStatus.INACTIVE);
    }

    private static UnitReader reader() {
        return new UnitReader(new Evidences(BankRecord.FHIR));
    }
}
