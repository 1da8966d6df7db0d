package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.IMPLANT_NOT_AS_PLANNED;
import static org.lensward.finding.FindingCode.IMPLANT_WITHOUT_PLAN;
import static org.lensward.finding.FindingCode.UNIT_EXPIRED;
import static org.lensward.finding.FindingCode.UNIT_GONE;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;
import static org.lensward.finding.FindingCode.UNIT_STEP_MISSING;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.EXPIRY;
import static org.lensward.record.bank.BankRecord.MODEL;
import static org.lensward.record.bank.BankRecord.SULCUS;
import static org.lensward.record.bank.BankRecord.carton;
import static org.lensward.record.bank.BankRecord.codes;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.PolicyFile;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Changes;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Publication;
import org.lensward.record.ReferenceTargets;
import org.lensward.record.bank.Implantation.Deviation;

/** An implantation on a real FHIR server, from a plan of the demo: harbour-60 of 22 D, sulcus lens of 21 D. */
class ImplantTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();
    private static final String BOOKING = "ServiceRequest/booking-01";
    private static final String PLAN = "Procedure/plan-booking-01";
    private static final OffsetDateTime AT = OffsetDateTime.parse("2026-12-10T10:05:00+01:00");
    private static final Deviation TORN = new Deviation("The surgeon", "Posterior capsule torn: lens in the sulcus.");

    private static int cartons;

    /** The booking and its plan as if never operated on. */
    @BeforeEach
    void plan() throws IOException {
        for (String file : List.of("in.json", "out.json")) {
            Bundle bundle = BankRecord.FHIR
                    .newJsonParser()
                    .parseResource(Bundle.class, Files.readString(Path.of("demo-data/an-ordinary-eye", file)));
            RECORD.client().transaction().withBundle(bundle).execute();
        }
    }

    @Test
    void the_plan_is_completed_with_the_lens_and_the_spare_goes_back() {
        LensUnit primary = picked(MODEL, 22);
        LensUnit spare = picked(MODEL, 22);
        LensUnit sulcus = reserved(SULCUS, 21);

        ImplantCard card = ready(BANK.implant(implantation(primary, Optional.empty()), CLERK));

        Procedure operation = RECORD.read(Procedure.class, PLAN);
        assertThat(operation.getStatus()).isEqualTo(ProcedureStatus.COMPLETED);
        assertThat(operation.getPerformedDateTimeType().getValueAsString()).isEqualTo("2026-12-10T10:05:00+01:00");
        assertThat(operation.getFocalDeviceFirstRep().getManipulated().getReference())
                .isEqualTo(name(primary));
        assertThat(RECORD.state(primary)).isEqualTo(UnitState.IMPLANTED);
        assertThat(RECORD.read(Device.class, name(primary)).getPatient().getReference())
                .isEqualTo("Patient/patient-01");
        assertThat(Stream.of(spare, sulcus).map(RECORD::state)).containsOnly(UnitState.AVAILABLE);
        assertThat(ready(BANK.heldFor(BOOKING))).extracting(BankRecord::name).contains(name(primary));
        assertThat(Stream.of("primary", "spare", "sulcus", "anterior-chamber").map(ImplantTest::request))
                .containsExactly("completed", "revoked", "revoked", "revoked");
        assertThat(card.model()).isEqualTo("Harbour 60");
        assertThat(card.power()).isEqualTo(Dioptres.of(22));
        assertThat(card.serial()).isEqualTo(primary.identity().serial());
        assertThat(card.lot()).contains("IMPLANT");
        assertThat(card.udi()).startsWith("(01)");
        assertThat(card.day()).isEqualTo(LocalDate.of(2026, 12, 10));
        assertThat(card.hospital()).isEqualTo("Harbour Eye Unit");
        assertThat(card.eye()).isEqualTo("right eye");
        assertThat(card).asString().isEqualTo("ImplantCard");
    }

    @Test
    void what_is_written_keeps_the_profiles() {
        LensUnit sulcus = picked(SULCUS, 21);
        reserved(MODEL, 22);
        ready(BANK.implant(implantation(sulcus, Optional.of(TORN)), CLERK));

        List<Resource> written = Stream.of(
                        List.<Resource>of(
                                RECORD.read(Procedure.class, PLAN),
                                RECORD.read(Device.class, name(sulcus)),
                                RECORD.read(DeviceUseStatement.class, "DeviceUseStatement/plan-booking-01-implanted"),
                                RECORD.read(DeviceRequest.class, "DeviceRequest/plan-booking-01-sulcus")),
                        RECORD.search("Provenance?target=" + name(sulcus)))
                .flatMap(List::stream)
                .toList();

        assertThat(written).hasSize(8).allSatisfy(each -> {
            assertThat(ProfileValidator.errors(each)).isEmpty();
            assertThat(ReferenceTargets.misdirected(each)).isEmpty();
        });
        assertThat(written.get(0).getMeta().getProfile())
                .extracting(profile -> profile.getValue())
                .containsExactly(ImplantTransaction.PROFILE);
    }

    @Test
    void another_lens_than_the_plans_is_refused_without_who_and_why() {
        LensUnit sulcus = picked(SULCUS, 21);

        assertThat(BANK.implant(implantation(sulcus, Optional.empty()), CLERK).findings())
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.code()).isEqualTo(IMPLANT_NOT_AS_PLANNED);
                    assertThat(finding.message()).contains("+21.00 D", "+22.00 D");
                });
        assertThat(RECORD.state(sulcus)).isEqualTo(UnitState.PICKED);
        assertThat(RECORD.read(Procedure.class, PLAN).getStatus()).isEqualTo(ProcedureStatus.PREPARATION);
    }

    @Test
    void another_lens_with_who_and_why_is_recorded_with_both() {
        LensUnit sulcus = picked(SULCUS, 21);
        ready(BANK.implant(implantation(sulcus, Optional.of(TORN)), CLERK));

        Annotation deviation = (Annotation) RECORD.read(Procedure.class, PLAN)
                .getExtensionByUrl(ImplantTransaction.DEVIATION)
                .getValue();
        assertThat(deviation.getText()).startsWith("Posterior capsule torn");
        assertThat(deviation.getAuthorStringType().getValue()).isEqualTo("The surgeon");
        assertThat(Stream.of("primary", "spare", "sulcus", "anterior-chamber").map(ImplantTest::request))
                .containsExactly("revoked", "revoked", "completed", "revoked");
    }

    @Test
    void a_completed_plan_takes_no_second_lens() {
        LensUnit first = picked(MODEL, 22);
        LensUnit second = RECORD.received(delivery(MODEL, 22));
        ready(BANK.implant(implantation(first, Optional.empty()), CLERK));
        moved(second, new Movement.Reserve(BOOKING, DAY), new Movement.Pick(BOOKING, DAY));

        assertThat(codes(BANK.implant(implantation(second, Optional.empty()), CLERK)))
                .containsExactly(IMPLANT_WITHOUT_PLAN);
        assertThat(RECORD.state(second)).isEqualTo(UnitState.PICKED);
    }

    @Test
    void a_lens_that_was_not_picked_or_is_too_old_or_gone_is_refused() {
        LensUnit onlyReserved = reserved(MODEL, 22);
        LensUnit worn = picked(MODEL, 22);
        Implantation late = new Implantation(
                BOOKING,
                name(worn),
                "S",
                "H",
                EXPIRY.plusDays(1).atStartOfDay().atOffset(ZoneOffset.UTC),
                Optional.empty());

        assertThat(codes(BANK.implant(implantation(onlyReserved, Optional.empty()), CLERK)))
                .containsExactly(UNIT_STEP_MISSING);
        assertThat(codes(BANK.implant(late, CLERK))).containsExactly(UNIT_EXPIRED);
        moved(worn, new Movement.Waste("dropped"));
        assertThat(codes(BANK.implant(implantation(worn, Optional.empty()), CLERK)))
                .containsExactly(UNIT_GONE);
        assertThat(codes(BANK.implant(
                        new Implantation(BOOKING, "Device/nothing", "S", "H", AT, Optional.empty()), CLERK)))
                .containsExactly(UNIT_NOT_IN_BANK);
    }

    @Test
    void a_booking_without_a_plan_or_without_an_eye_takes_no_lens() throws IOException {
        LensUnit lens = picked(MODEL, 22);
        String unplanned = RECORD.book("unplanned");
        Procedure sideless = RECORD.read(Procedure.class, PLAN);
        sideless.getBodySiteFirstRep().getCodingFirstRep().setCode("81745001");

        assertThat(codes(BANK.implant(new Implantation(unplanned, name(lens), "S", "H", AT, Optional.of(TORN)), CLERK)))
                .containsExactly(IMPLANT_WITHOUT_PLAN);
        RECORD.put(sideless);
        assertThat(codes(BANK.implant(implantation(lens, Optional.of(TORN)), CLERK)))
                .containsExactly(IMPLANT_WITHOUT_PLAN);
    }

    /** The plan changes between the look and the writing: nothing of the implantation is written. */
    @Test
    void a_plan_changed_meanwhile_writes_nothing() {
        LensUnit lens = picked(MODEL, 22);
        RecordDoor slow = new OvertakenDoor(RECORD.door(), () -> {
            Procedure plan = RECORD.read(Procedure.class, PLAN);
            plan.addNote().setText("Seen by another");
            RECORD.put(plan);
        });

        assertThat(codes(new LensBank(BankRecord.FHIR, slow).implant(implantation(lens, Optional.empty()), CLERK)))
                .containsExactly(UNIT_MOVED_MEANWHILE);
        assertThat(RECORD.state(lens)).isEqualTo(UnitState.PICKED);
    }

    /** Otherwise the watch would plan the operated eye again, and would not look again at the other one. */
    @Test
    void the_adapter_leaves_the_completed_plan_alone_but_looks_at_the_fellow_eye() {
        ready(BANK.implant(implantation(picked(MODEL, 22), Optional.empty()), CLERK));
        Bundle gathered = new Gatherer(RECORD.door()).gather(BOOKING + " Patient/patient-01");
        Clock morning = Clock.fixed(CLERK.at(), ZoneOffset.UTC);

        assertThat(new BundlePlanning(BankRecord.FHIR, PolicyFile.shipped(), morning).plan(gathered))
                .singleElement()
                .extracting(BundlePlanning.Planned::publication)
                .isEqualTo(new Publication.Nothing(Publication.Reason.OPERATION_BEGUN));
        Procedure operation = RECORD.read(Procedure.class, PLAN);
        assertThat(Changes.isOurs(operation)).isFalse();
        assertThat(Changes.patient(operation)).contains("Patient/patient-01");
    }

    @Test
    void the_trail_names_the_versions_of_plan_and_lens() {
        LensUnit lens = picked(MODEL, 22);
        ready(BANK.implant(implantation(lens, Optional.empty()), CLERK));

        assertThat(RECORD.search("Provenance?target=" + PLAN).stream()
                        .map(Provenance.class::cast)
                        .filter(each -> each.getActivity().getCodingFirstRep().getCode() != null)
                        .filter(each -> each.getTarget().stream()
                                .anyMatch(target -> target.getReference().equals(name(lens)))))
                .singleElement()
                .satisfies(each -> assertThat(each.getEntity())
                        .extracting(entity -> entity.getWhat().getReference())
                        .anyMatch(what -> what.startsWith(PLAN + "/_history/"))
                        .contains(name(lens) + "/_history/3", BOOKING));
    }

    private static String request(String role) {
        return RECORD.read(DeviceRequest.class, "DeviceRequest/plan-booking-01-" + role)
                .getStatus()
                .toCode();
    }

    private static Implantation implantation(LensUnit unit, Optional<Deviation> deviation) {
        return new Implantation(BOOKING, name(unit), "The surgeon", "Organization/hospital", AT, deviation);
    }

    private static LensUnit reserved(String model, double power) {
        return moved(RECORD.received(delivery(model, power)), new Movement.Reserve(BOOKING, DAY));
    }

    private static LensUnit picked(String model, double power) {
        return moved(reserved(model, power), new Movement.Pick(BOOKING, DAY));
    }

    private static Delivery delivery(String model, double power) {
        String serial = "implant-" + ++cartons;
        return carton(
                model,
                power,
                new LensUnit.Identity("09521234000013", Optional.of("IMPLANT"), Optional.of(serial), EXPIRY));
    }

    private static LensUnit moved(LensUnit unit, Movement... movements) {
        LensUnit moved = unit;
        for (Movement movement : movements) {
            moved = ready(BANK.move(name(unit), movement, CLERK));
        }
        return moved;
    }
}
