package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.lensward.finding.FindingCode.BOOKING_WITHOUT_DATE;
import static org.lensward.finding.FindingCode.LENS_MODEL_UNKNOWN;
import static org.lensward.finding.FindingCode.MEASUREMENT_EYES_CONFLICT;
import static org.lensward.finding.FindingCode.MEASUREMENT_NOT_FINAL;
import static org.lensward.finding.FindingCode.TARGET_CONTRADICTORY;
import static org.lensward.finding.FindingCode.TARGET_NOT_RECORDED;
import static org.lensward.finding.FindingCode.UNIT_UNKNOWN;

import java.time.LocalDate;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.SurgeonGrade;

/** One booking: which, when, aimed at what, with which lens, by whom. */
class BookingReaderTest {

    private static final String TARGET = "https://lensward.org/fhir/StructureDefinition/target-refraction";

    private final Bundles record = Bundles.ordinary();

    @ParameterizedTest
    @ValueSource(strings = {"415089008", "313999004", "385468004"})
    void lens_surgery_is_planned(String code) {
        record.booking(each -> each.setCode(Bundles.snomed(code)));
        assertThat(record.cases()).hasSize(1);
    }

    @Test
    void other_surgery_is_not() {
        record.booking(each -> each.setCode(Bundles.snomed("397516006")));
        assertThat(record.cases()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = ServiceRequestStatus.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"ACTIVE", "NULL"})
    void only_an_active_booking_is_planned(ServiceRequestStatus status) {
        record.booking(each -> each.setStatus(status));
        assertThat(record.cases()).isEmpty();
    }

    @Test
    void a_booking_whose_patient_is_not_there_is_unreadable_and_says_where() {
        record.booking(each -> each.setSubject(new Reference("Patient/p2")));
        UnreadableRecord refusal = catchThrowableOfType(UnreadableRecord.class, record::cases);
        assertThat(refusal.element()).isEqualTo("ServiceRequest/b1.subject");
        OperationOutcome.OperationOutcomeIssueComponent issue =
                refusal.outcome().getIssueFirstRep();
        assertThat(issue.getSeverity()).isEqualTo(OperationOutcome.IssueSeverity.ERROR);
        assertThat(issue.getCode()).isEqualTo(OperationOutcome.IssueType.NOTFOUND);
        assertThat(issue.getExpression()).extracting(Object::toString).containsExactly("ServiceRequest/b1.subject");
        assertThat(issue.getDiagnostics()).contains("Patient/p2");
    }

    @Test
    void the_surgeons_grade_is_read_and_an_unknown_one_is_unknown() {
        record.booking(each -> each.setPerformerType(Bundles.ours("surgeon-grade", "registrar")));
        assertThat(record.planning().booking().surgeon().map(Measured::value)).contains(SurgeonGrade.REGISTRAR);
        record.booking(each -> each.setPerformerType(Bundles.ours("surgeon-grade", "apprentice")));
        assertThat(record.planning().booking().surgeon()).isEmpty();
    }

    @Nested
    class Given_a_date {

        private void appointment(String id, AppointmentStatus status, String start) {
            Appointment appointment = new Appointment().setStatus(status);
            appointment.setStartElement(new InstantType(start));
            appointment.addBasedOn(new Reference("ServiceRequest/b1"));
            appointment.setId(id);
            record.add(appointment);
        }

        @Test
        void on_the_booking_it_comes_before_any_appointment() {
            appointment("a1", AppointmentStatus.BOOKED, "2026-04-01T08:00:00+02:00");
            assertThat(record.planning().booking().operation()).contains(LocalDate.of(2026, 3, 16));
        }

        @Test
        void of_a_period_it_is_its_first_day() {
            record.booking(each ->
                    each.setOccurrence(new Period().setStartElement(new DateTimeType("2026-03-20T08:00:00+01:00"))));
            assertThat(record.planning().booking().operation()).contains(LocalDate.of(2026, 3, 20));
        }

        @Test
        void nowhere_the_plan_is_withheld() {
            record.booking(each -> each.setOccurrence(null));
            assertThat(record.codes()).containsExactly(BOOKING_WITHOUT_DATE);
        }

        @Nested
        class Of_an_appointment {

            Of_an_appointment() {
                record.booking(each -> each.setOccurrence(null));
                appointment("a1", AppointmentStatus.BOOKED, "2026-03-18T08:00:00+01:00");
            }

            @Test
            void it_is_read() {
                assertThat(record.planning().booking().operation()).contains(LocalDate.of(2026, 3, 18));
                assertThat(record.found()).isEmpty();
            }

            @Test
            void put_off_it_makes_another_plan() {
                String before = record.plan().fingerprint().hex();
                record.change(
                        Appointment.class,
                        "a1",
                        each -> each.setStartElement(new InstantType("2026-03-25T08:00:00+01:00")));
                assertThat(record.plan().fingerprint().hex()).isNotEqualTo(before);
            }

            @Test
            void arrived_at_it_makes_the_same_plan() {
                String before = record.plan().fingerprint().hex();
                record.change(Appointment.class, "a1", each -> each.setStatus(AppointmentStatus.ARRIVED));
                assertThat(record.plan().fingerprint().hex()).isEqualTo(before);
            }

            @ParameterizedTest
            @EnumSource(
                    value = AppointmentStatus.class,
                    names = {"CANCELLED", "NOSHOW", "ENTEREDINERROR"})
            void called_off_it_is_no_date(AppointmentStatus status) {
                record.change(Appointment.class, "a1", each -> each.setStatus(status));
                assertThat(record.codes()).containsExactly(BOOKING_WITHOUT_DATE);
            }

            @Test
            void of_several_that_stand_the_last_one_counts() {
                appointment("a2", AppointmentStatus.BOOKED, "2026-03-11T08:00:00+01:00");
                assertThat(record.planning().booking().operation()).contains(LocalDate.of(2026, 3, 18));
            }
        }
    }

    @Nested
    class Given_a_target {

        private void observed(String value, String side) {
            Observation target = Shape.observation("target", "target-refraction")
                    .setValue(Bundles.dioptres(value))
                    .addBasedOn(new Reference("ServiceRequest/b1"));
            if (!side.isEmpty()) {
                target.setBodySite(Bundles.snomed(side));
            }
            record.add(target);
        }

        private void withoutExtension() {
            record.booking(each -> each.getExtension().clear());
        }

        @Test
        void on_the_booking_it_is_read() {
            assertThat(record.planning().booking().target().map(Measured::value))
                    .contains(Dioptres.of(-0.25));
        }

        @Test
        void observed_for_the_booking_it_needs_no_eye_of_its_own() {
            withoutExtension();
            observed("-1.50", "");
            assertThat(record.planning().booking().target().map(Measured::value))
                    .contains(Dioptres.of(-1.5));
            assertThat(record.found()).isEmpty();
        }

        @Test
        void observed_for_the_other_eye_it_is_refused() {
            withoutExtension();
            observed("-1.50", "1290031003");
            assertThat(record.codes()).containsExactly(MEASUREMENT_EYES_CONFLICT);
            assertThat(record.planning().booking().target()).isEmpty();
        }

        @Test
        void said_twice_the_same_it_is_read() {
            observed("-0.250", "1290032005");
            assertThat(record.found()).isEmpty();
        }

        @Test
        void said_twice_differently_the_plan_is_withheld_with_both_places() {
            observed("-2.00", "");
            assertThat(record.codes()).containsExactly(TARGET_CONTRADICTORY);
            assertThat(record.found().get(0).message()).contains("-0.25 D", "-2.00 D");
            assertThat(record.found().get(0).evidence())
                    .extracting(Object::toString)
                    .containsExactly(
                            "ServiceRequest/b1.extension(target-refraction).value", "Observation/target.value");
        }

        @Test
        void not_final_it_is_noted_and_not_used() {
            observed("-2.00", "");
            record.change(Observation.class, "target", each -> each.setStatus(ObservationStatus.PRELIMINARY));
            assertThat(record.codes()).containsExactly(MEASUREMENT_NOT_FINAL);
        }

        @Test
        void in_an_unknown_unit_it_is_refused() {
            record.booking(each -> each.getExtensionByUrl(TARGET).setValue(Bundles.quantity("-0.25", "mm")));
            assertThat(record.codes()).containsExactly(UNIT_UNKNOWN);
        }

        @Test
        void nowhere_the_policys_is_used_under_a_condition() {
            withoutExtension();
            assertThat(record.plan().findings()).extracting(Finding::code).contains(TARGET_NOT_RECORDED);
        }
    }

    @Nested
    class Given_a_lens_model {

        private void naming(String reference) {
            record.booking((ServiceRequest each) -> each.addSupportingInfo(new Reference(reference)));
        }

        @Test
        void named_on_the_booking_it_is_read() {
            naming("DeviceDefinition/bag");
            assertThat(record.planning().booking().lensModel().map(Measured::value))
                    .contains("DeviceDefinition/bag");
        }

        @Test
        void by_its_full_address_it_is_the_same() {
            naming("https://record.example/fhir/DeviceDefinition/bag/_history/3");
            assertThat(record.plan()
                            .lens()
                            .orElseThrow()
                            .kit()
                            .primary()
                            .model()
                            .name())
                    .isEqualTo("the bag lens");
        }

        @Test
        void nobody_knows_the_plan_is_withheld() {
            naming("DeviceDefinition/none");
            assertThat(record.plan().findings()).extracting(Finding::code).contains(LENS_MODEL_UNKNOWN);
        }

        @Test
        void other_supporting_information_is_no_lens() {
            naming("Observation/length-right");
            assertThat(record.planning().booking().lensModel()).isEmpty();
        }
    }
}
