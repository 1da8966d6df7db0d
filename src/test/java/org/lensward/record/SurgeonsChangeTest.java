package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.CheckedRecord.BOOKING;
import static org.lensward.record.CheckedRecord.SURGEON;

import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Test;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.plan.EyePlan;
import org.lensward.quantity.Dioptres;
import org.lensward.record.check.CheckAnswer;
import org.lensward.record.check.Decision;
import org.lensward.record.check.LensChange;

/** A surgeon wants another target or another lens: the booking says so, and the plan is made again from it. */
class SurgeonsChangeTest {

    private static final String TARGET = "https://lensward.org/fhir/StructureDefinition/target-refraction";
    private static final Decision READING = new Decision(SURGEON, "wishes to read without glasses");
    private static final LensChange TO_READ = new LensChange(Optional.of(Dioptres.of(-2.5)), Optional.empty());

    private final CheckedRecord record = CheckedRecord.upTo(Checkpoint.PICK);

    private CheckAnswer change(LensChange change) {
        return record.checks.change(record.record.bundle(), BOOKING, READING, change);
    }

    @Test
    void another_target_is_planned_again_and_voids_what_was_verified() {
        CheckAnswer.Write write = record.post(change(TO_READ));
        CheckedRecord.assertKept(write);
        assertThat(write.state()).isEqualTo(CheckState.PICKED);
        assertThat(record.present(Checkpoint.SIGN_IN).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.CHECK_PLAN_CHANGED);

        EyePlan plan = record.record.plan();
        assertThat(plan.lens().orElseThrow().target()).isEqualTo(Dioptres.of(-2.5));
        Publishing.published(record.record);
        assertThat(record.tasks())
                .extracting(Task::getStatus)
                .containsExactlyInAnyOrder(TaskStatus.CANCELLED, TaskStatus.REQUESTED);
    }

    @Test
    void a_target_that_an_observation_states_is_amended_there_and_contradicts_nothing() {
        record.record.booking(each -> each.getExtension().clear());
        Observation stated = Shape.placed(Shape.observation("target", "target-refraction"), "1290032005");
        stated.addBasedOn(new Reference(BOOKING)).setValue(Bundles.dioptres("-0.25"));
        record.record.add(stated);
        Publishing.published(record.record);

        record.post(change(TO_READ));
        assertThat(record.request().hasExtension(TARGET)).isFalse();
        assertThat(record.record.plan().lens().orElseThrow().target()).isEqualTo(Dioptres.of(-2.5));
        assertThat(record.record.codes()).doesNotContain(FindingCode.TARGET_CONTRADICTORY);
    }

    @Test
    void another_lens_takes_the_place_of_the_one_the_booking_named() {
        record.record.booking(each -> each.addSupportingInfo(new Reference("DeviceDefinition/bag"))
                .addSupportingInfo(new Reference("Observation/length-right")));
        record.record.add(LensDefinitions.model("other", "capsular-bag", "119.0"));
        Publishing.published(record.record);

        record.post(change(new LensChange(Optional.empty(), Optional.of("DeviceDefinition/other"))));
        ServiceRequest booking = record.request();
        assertThat(booking.getSupportingInfo())
                .extracting(Reference::getReference)
                .containsExactly("Observation/length-right", "DeviceDefinition/other");
        assertThat(record.record
                        .plan()
                        .lens()
                        .orElseThrow()
                        .kit()
                        .primary()
                        .model()
                        .name())
                .isEqualTo("the other lens");
    }

    @Test
    void a_plan_that_is_withheld_has_no_check_but_its_booking_can_be_changed() {
        record.record.change(Observation.class, "length-right", each -> each.setBodySite(new CodeableConcept()));
        Publishing.published(record.record);
        assertThat(record.post(change(TO_READ)).state()).isEqualTo(CheckState.AWAITING_CONFIRMATION);
    }

    @Test
    void nothing_by_nobody_or_too_late_is_refused() {
        assertThat(change(new LensChange(Optional.empty(), Optional.empty())).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.CHECK_CHANGE_EMPTY);
        assertThat(record.checks
                        .change(record.record.bundle(), BOOKING, new Decision("", "why"), TO_READ)
                        .findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.CHECK_SURGEON_UNNAMED);
        record.record.change(Procedure.class, "plan-b1", each -> each.setStatus(ProcedureStatus.INPROGRESS));
        assertThat(change(TO_READ).findings()).extracting(Finding::code).containsExactly(FindingCode.CHECK_CLOSED);
    }
}
