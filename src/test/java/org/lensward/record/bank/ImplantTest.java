package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.MODEL;
import static org.lensward.record.bank.BankRecord.SULCUS;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;
import static org.lensward.record.bank.Operations.BOOKING;
import static org.lensward.record.bank.Operations.PLAN;
import static org.lensward.record.bank.Operations.TORN;
import static org.lensward.record.bank.Operations.implantation;
import static org.lensward.record.bank.Operations.picked;
import static org.lensward.record.bank.Operations.plan;
import static org.lensward.record.bank.Operations.reserved;

import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
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
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Changes;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Publication;
import org.lensward.record.ReferenceTargets;

/** An implantation on a real FHIR server, from a plan of the demo: harbour-60 of 22 D, sulcus lens of 21 D. */
class ImplantTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    @BeforeEach
    void planned() throws IOException {
        plan();
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
        assertThat(Stream.of("primary", "spare", "sulcus", "anterior-chamber").map(Operations::request))
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
    void another_lens_with_who_and_why_is_recorded_with_both() {
        LensUnit sulcus = picked(SULCUS, 21);
        ready(BANK.implant(implantation(sulcus, Optional.of(TORN)), CLERK));

        Annotation deviation = (Annotation) RECORD.read(Procedure.class, PLAN)
                .getExtensionByUrl(ImplantTransaction.DEVIATION)
                .getValue();
        assertThat(deviation.getText()).startsWith("Posterior capsule torn");
        assertThat(deviation.getAuthorStringType().getValue()).isEqualTo("The surgeon");
        assertThat(Stream.of("primary", "spare", "sulcus", "anterior-chamber").map(Operations::request))
                .containsExactly("revoked", "revoked", "completed", "revoked");
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
}
