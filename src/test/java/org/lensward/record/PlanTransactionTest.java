package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.Publication.Reason.NO_PLAN;
import static org.lensward.record.Publication.Reason.OPERATION_BEGUN;
import static org.lensward.record.Publication.Reason.UNCHANGED;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.plan.PlanState;

/** What one plan does to the record that holds none, the same, or another one. */
class PlanTransactionTest {

    private static final String REPLACES = "https://lensward.org/fhir/StructureDefinition/replaces";

    private static void longer(Bundles record) {
        record.change(Observation.class, "length-right", each -> each.setValue(Bundles.quantity("24.10", "mm")));
    }

    private static void sideless(Bundles record) {
        record.change(Observation.class, "length-right", each -> each.setBodySite(new CodeableConcept()));
    }

    private static Task check(Bundle bundle, TaskStatus status) {
        return Publishing.all(bundle, Task.class)
                .filter(task -> task.getStatus() == status)
                .findFirst()
                .orElseThrow();
    }

    @Nested
    class Given_no_plan_yet {

        private final Bundles record = Bundles.ordinary();
        private final Bundle written = Publishing.written(Publishing.publish(record));

        @Test
        void everything_is_put_by_id_in_one_transaction() {
            assertThat(written.getType()).isEqualTo(Bundle.BundleType.TRANSACTION);
            assertThat(written.getEntry()).allSatisfy(entry -> {
                assertThat(entry.getRequest().getMethod()).isEqualTo(HTTPVerb.PUT);
                assertThat(entry.getRequest().getUrl()).isEqualTo(Shelf.name(entry.getResource()));
                assertThat(entry.getRequest().hasIfMatch()).isFalse();
            });
        }

        @Test
        void a_ready_plan_is_whole() {
            Map<String, Long> types = written.getEntry().stream()
                    .collect(Collectors.groupingBy(entry -> entry.getResource().fhirType(), Collectors.counting()));
            types.remove("DetectedIssue");
            assertThat(types)
                    .isEqualTo(Map.of(
                            "Procedure", 1L,
                            "DeviceRequest", 4L,
                            "Observation", 5L,
                            "RiskAssessment", 1L,
                            "Task", 1L,
                            "Provenance", 1L));
        }

        @Test
        void the_trail_names_all_that_was_written_and_every_source_in_its_version() {
            Provenance trail =
                    Publishing.all(written, Provenance.class).findFirst().orElseThrow();
            List<String> others = Publishing.urls(written).stream()
                    .filter(url -> !url.startsWith("Provenance"))
                    .toList();
            assertThat(trail.getTarget()).extracting(Reference::getReference).containsExactlyElementsOf(others);
            assertThat(trail.getEntity())
                    .extracting(each -> each.getWhat().getReference())
                    .contains("ServiceRequest/b1/_history/1", "Observation/length-right/_history/1", "Patient/p1");
            assertThat(trail.getRecorded().toInstant()).isEqualTo(Publishing.NOW);
        }

        @Test
        void the_same_plan_is_the_same_bytes() {
            assertThat(Publishing.json(Publishing.written(Publishing.publish(Bundles.ordinary()))))
                    .isEqualTo(Publishing.json(written));
        }

        @Test
        void the_order_of_the_record_does_not_matter() {
            assertThat(List.of(1L, 2L, 3L, 4L, 5L)).allSatisfy(seed -> assertThat(Publishing.json(Publishing.written(
                            Publishing.publish(Bundles.ordinary().shuffled(seed)))))
                    .isEqualTo(Publishing.json(written)));
        }
    }

    @Nested
    class Given_the_very_plan {

        private final Bundles record = Publishing.published(Bundles.ordinary());

        @Test
        void nothing_is_written() {
            assertThat(Publishing.publish(record)).isEqualTo(new Publication.Nothing(UNCHANGED));
        }

        /** As a server leaves it that takes a transaction piece by piece and refuses one. */
        @Test
        void a_piece_that_is_missing_has_all_of_it_written_again() {
            record.all().stream()
                    .filter(DeviceRequest.class::isInstance)
                    .forEach(each -> record.remove(Shelf.name(each)));
            assertThat(Publishing.all(Publishing.written(Publishing.publish(record)), DeviceRequest.class))
                    .hasSize(4);
        }

        @Test
        void a_piece_of_an_earlier_plan_that_still_stands_beside_it_is_taken_back() {
            DeviceRequest old = (DeviceRequest) record.all().stream()
                    .filter(DeviceRequest.class::isInstance)
                    .findFirst()
                    .orElseThrow()
                    .copy();
            old.setId("DeviceRequest/plan-b1-left-over");
            record.add(old);
            assertThat(Publishing.all(Publishing.written(Publishing.publish(record)), DeviceRequest.class))
                    .filteredOn(each -> each.getStatus() == DeviceRequestStatus.REVOKED)
                    .extracting(each -> each.getIdElement().getIdPart())
                    .containsExactly("plan-b1-left-over");
        }

        @Test
        void a_new_address_of_the_patient_changes_nothing() {
            record.change(Patient.class, "p1", each -> each.addAddress().setCity("Elsewhere"));
            assertThat(Publishing.publish(record)).isEqualTo(new Publication.Nothing(UNCHANGED));
        }

        @Test
        void another_birth_date_makes_another_plan_and_another_check() {
            record.change(
                    Patient.class, "p1", each -> each.getBirthDateElement().setValueAsString("1961-01-31"));
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(check(written, TaskStatus.REQUESTED).getInput())
                    .filteredOn(input ->
                            input.getType().getCodingFirstRep().getCode().equals("birth-date"))
                    .extracting(input -> input.getValue().primitiveValue())
                    .containsExactly("1961-01-31");
        }

        @Test
        void another_name_or_identifier_makes_another_plan() {
            record.change(Patient.class, "p1", each -> each.getNameFirstRep().setFamily("Other"));
            assertThat(Publishing.publish(record)).isInstanceOf(Publication.Write.class);
            Bundles renumbered = Publishing.published(Bundles.ordinary());
            renumbered.change(
                    Patient.class, "p1", each -> each.getIdentifierFirstRep().setValue("704-1183"));
            assertThat(Publishing.publish(renumbered)).isInstanceOf(Publication.Write.class);
        }
    }

    @Nested
    class Given_an_earlier_plan {

        private final Bundles record = Publishing.published(Bundles.ordinary());

        @Test
        void its_lens_requests_are_overwritten_only_in_the_version_that_was_read() {
            longer(record);
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(List.of("primary", "spare", "sulcus", "anterior-chamber"))
                    .allSatisfy(role -> {
                        Bundle.BundleEntryComponent entry = Publishing.entry(written, "DeviceRequest/plan-b1-" + role)
                                .orElseThrow();
                        assertThat(entry.getRequest().getIfMatch()).isEqualTo("W/\"1\"");
                        assertThat(((DeviceRequest) entry.getResource()).getStatus())
                                .isEqualTo(DeviceRequestStatus.ACTIVE);
                    });
            assertThat(Publishing.entry(written, "Procedure/plan-b1")
                            .orElseThrow()
                            .getRequest()
                            .getIfMatch())
                    .isEqualTo("W/\"1\"");
        }

        @Test
        void its_lens_check_is_void_and_the_new_one_says_which_it_replaces() {
            longer(record);
            Bundle written = Publishing.written(Publishing.publish(record));
            Task old = check(written, TaskStatus.CANCELLED);
            Task fresh = check(written, TaskStatus.REQUESTED);
            assertThat(old.getBusinessStatus().getCodingFirstRep().getCode()).isEqualTo("void");
            assertThat(old.getStatusReason().getText()).startsWith("The plan was replaced by ");
            assertThat(Publishing.entry(written, Shelf.name(old))
                            .orElseThrow()
                            .getRequest()
                            .getIfMatch())
                    .isEqualTo("W/\"1\"");
            assertThat(((Reference) fresh.getExtensionByUrl(REPLACES).getValue()).getReference())
                    .isEqualTo(Shelf.name(old));
        }

        @Test
        void a_completed_check_is_void_too() {
            String check = record.all().stream()
                    .filter(Task.class::isInstance)
                    .findFirst()
                    .orElseThrow()
                    .getIdElement()
                    .getIdPart();
            record.change(Task.class, check, each -> each.setStatus(TaskStatus.COMPLETED));
            longer(record);
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(check(written, TaskStatus.CANCELLED).getIdElement().getIdPart())
                    .isEqualTo(check);
        }

        @Test
        void withheld_after_ready_everything_of_a_lens_is_taken_back() {
            sideless(record);
            assertThat(record.plan().state()).isEqualTo(PlanState.WITHHELD);
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(Publishing.all(written, DeviceRequest.class))
                    .hasSize(4)
                    .allMatch(each -> each.getStatus() == DeviceRequestStatus.REVOKED);
            assertThat(Publishing.all(written, Observation.class))
                    .hasSize(5)
                    .allMatch(each -> each.getStatus() == ObservationStatus.CANCELLED);
            assertThat(Publishing.all(written, Task.class))
                    .hasSize(1)
                    .allMatch(each -> each.getStatus() == TaskStatus.CANCELLED);
        }

        @Test
        void findings_that_no_longer_hold_are_cancelled() {
            Bundles doubtful = Bundles.ordinary();
            sideless(doubtful);
            Publishing.published(doubtful);
            doubtful.change(Observation.class, "length-right", each -> each.setBodySite(Bundles.snomed("1290032005")));
            Bundle written = Publishing.written(Publishing.publish(doubtful));
            DetectedIssue issue =
                    (DetectedIssue) Publishing.entry(written, "DetectedIssue/plan-b1-measurement-without-eye")
                            .orElseThrow()
                            .getResource();
            assertThat(issue.getStatus()).isEqualTo(DetectedIssue.DetectedIssueStatus.CANCELLED);
            assertThat(Publishing.all(written, DeviceRequest.class)).hasSize(4);
        }

        @Test
        void back_to_the_first_measurement_the_first_check_is_asked_for_again() {
            String first = Publishing.all(record.bundle(), Task.class)
                    .findFirst()
                    .orElseThrow()
                    .getIdElement()
                    .getIdPart();
            Observation measured = (Observation) record.all().stream()
                    .filter(each -> Shelf.name(each).equals("Observation/length-right"))
                    .findFirst()
                    .orElseThrow()
                    .copy();
            longer(record);
            Publishing.published(record);
            record.add(measured);
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(check(written, TaskStatus.REQUESTED).getIdElement().getIdPart())
                    .isEqualTo(first);
            assertThat(Publishing.entry(written, "Task/" + first)
                            .orElseThrow()
                            .getRequest()
                            .getIfMatch())
                    .isEqualTo("W/\"2\"");
        }

        @Test
        void another_bookings_plan_is_not_touched() {
            Task other = new Task().setStatus(TaskStatus.REQUESTED);
            other.addIdentifier()
                    .setSystem("https://lensward.org/fhir/sid/eye-plan")
                    .setValue("b2");
            other.setId("plan-b2-check-1");
            record.add(other);
            longer(record);
            assertThat(Publishing.urls(Publishing.written(Publishing.publish(record))))
                    .doesNotContain("Task/plan-b2-check-1");
        }
    }

    @Nested
    class Given_an_operation_begun {

        @ParameterizedTest
        @EnumSource(
                value = ProcedureStatus.class,
                names = {"INPROGRESS", "COMPLETED", "STOPPED", "ONHOLD"})
        void nothing_is_written_whatever_has_changed(ProcedureStatus status) {
            Bundles record = Publishing.published(Bundles.ordinary());
            record.change(Procedure.class, "plan-b1", each -> each.setStatus(status));
            longer(record);
            assertThat(Publishing.publish(record)).isEqualTo(new Publication.Nothing(OPERATION_BEGUN));
            assertThat(Publishing.withdraw(record)).isEqualTo(new Publication.Nothing(OPERATION_BEGUN));
        }
    }

    @Nested
    class Given_a_booking_withdrawn {

        private final Bundles record = Publishing.published(Bundles.ordinary());

        @Test
        void every_piece_of_its_plan_is_taken_back() {
            Bundle written = Publishing.written(Publishing.withdraw(record));
            assertThat(Publishing.all(written, Procedure.class))
                    .extracting(Procedure::getStatus)
                    .containsExactly(ProcedureStatus.NOTDONE);
            assertThat(Publishing.all(written, DeviceRequest.class))
                    .hasSize(4)
                    .allMatch(each -> each.getStatus() == DeviceRequestStatus.REVOKED);
            assertThat(Publishing.all(written, RiskAssessment.class))
                    .hasSize(1)
                    .allMatch(each -> each.getStatus() == RiskAssessment.RiskAssessmentStatus.CANCELLED);
            assertThat(Publishing.all(written, Task.class))
                    .extracting(task -> task.getStatusReason().getText())
                    .containsExactly("The booking was withdrawn.");
            assertThat(written.getEntry())
                    .allMatch(entry -> entry.getRequest().getIfMatch().equals("W/\"1\""));
        }

        @Test
        void again_there_is_nothing_left_to_take_back() {
            Publishing.taken(record, Publishing.withdraw(record));
            assertThat(Publishing.withdraw(record)).isEqualTo(new Publication.Nothing(NO_PLAN));
        }

        @Test
        void never_planned_there_is_nothing_to_take_back() {
            assertThat(Publishing.withdraw(Bundles.ordinary())).isEqualTo(new Publication.Nothing(NO_PLAN));
        }

        @Test
        void booked_again_it_is_planned_again() {
            Publishing.taken(record, Publishing.withdraw(record));
            Bundle written = Publishing.written(Publishing.publish(record));
            assertThat(Publishing.all(written, Procedure.class))
                    .extracting(Procedure::getStatus)
                    .containsExactly(ProcedureStatus.PREPARATION);
            assertThat(check(written, TaskStatus.REQUESTED)).isNotNull();
        }
    }
}
