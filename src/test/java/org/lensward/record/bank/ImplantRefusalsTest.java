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
import static org.lensward.record.bank.BankRecord.codes;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;
import static org.lensward.record.bank.Operations.AT;
import static org.lensward.record.bank.Operations.BOOKING;
import static org.lensward.record.bank.Operations.PLAN;
import static org.lensward.record.bank.Operations.TORN;
import static org.lensward.record.bank.Operations.delivery;
import static org.lensward.record.bank.Operations.implantation;
import static org.lensward.record.bank.Operations.moved;
import static org.lensward.record.bank.Operations.picked;
import static org.lensward.record.bank.Operations.plan;
import static org.lensward.record.bank.Operations.reserved;

import java.io.IOException;
import java.time.ZoneOffset;
import java.util.Optional;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;

/** What is not written as an implantation, on a real FHIR server. */
class ImplantRefusalsTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    @BeforeEach
    void planned() throws IOException {
        plan();
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
}
