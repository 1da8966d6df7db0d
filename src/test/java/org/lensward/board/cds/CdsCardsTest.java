package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.finding.FindingCode;
import org.lensward.record.StoredPlan;

/** What the hooks say, through HTTP, of the demo's planned day. Every answer is held against {@link CdsRules}. */
@ExtendWith(ServedDayExtension.class)
class CdsCardsTest {

    private final ServedDay day;

    CdsCardsTest(ServedDay day) {
        this.day = day;
    }

    private static String patient(StoredPlan stored) {
        return stored.booking().getSubject().getReferenceElement().getIdPart();
    }

    @Test
    void discovery_lists_three_services_as_the_standard_has_them() {
        HttpResponse<String> answer = day.send(day.to("/cds-services"));
        assertThat(answer.statusCode()).isEqualTo(200);
        JsonNode services = Hooks.tree(answer.body()).path("services");
        services.forEach(CdsRules::isService);
        assertThat(services.findValuesAsText("id"))
                .containsExactlyInAnyOrder("patient-view", "appointment-book", "order-sign");
    }

    @Nested
    class When_a_patient_is_opened {

        private JsonNode view(StoredPlan stored) {
            return Hooks.cards(day, "patient-view", patient(stored), call -> {});
        }

        @Test
        void a_withheld_plan_is_critical_and_says_why_and_what_to_do() {
            StoredPlan withheld = day.any("withheld");
            JsonNode card = view(withheld).path(0);
            assertThat(card.path("indicator").asText()).isEqualTo("critical");
            assertThat(card.path("summary").asText()).contains("no lens is proposed");
            String remedy =
                    withheld.issues().get(0).getMitigationFirstRep().getAction().getText();
            assertThat(card.path("detail").asText()).contains(Reason.plain(remedy));
        }

        @Test
        void a_provisional_plan_warns_and_a_ready_one_informs_of_its_lens() {
            assertThat(view(day.any("provisional")).path(0).path("indicator").asText())
                    .isEqualTo("warning");
            StoredPlan ready = day.any("ready");
            JsonNode card = view(ready).path(0);
            assertThat(card.path("indicator").asText()).isEqualTo("info");
            assertThat(card.path("summary").asText())
                    .contains("plan ready", StoredPlan.power(ready.primary().orElseThrow()));
        }

        /** The demo's bank lacks lenses on purpose; the stock check of the HTTP interface is asked which. */
        @Test
        void a_lens_that_the_stock_check_does_not_find_has_a_card_of_its_own() {
            JsonNode sheet = Hooks.tree(
                    day.send(day.to("/api/stock?from=2026-12-10&to=2026-12-10")).body());
            for (StoredPlan stored : day.plans()) {
                String booking =
                        "ServiceRequest/" + stored.booking().getIdElement().getIdPart();
                List<String> lacking = new ArrayList<>();
                sheet.path("findings").forEach(each -> {
                    if (each.path("code").asText().equals("lens-not-in-stock")
                            && each.path("evidence").toString().contains(booking + "\"")) {
                        lacking.add(Reason.plain(each.path("message").asText()));
                    }
                });
                JsonNode cards = view(stored);
                assertThat(cards).as(booking).hasSize(lacking.isEmpty() ? 1 : 2);
                lacking.forEach(each ->
                        assertThat(cards.path(1).path("detail").asText()).contains(each));
            }
            assertThat(sheet.path("findings").findValuesAsText("code")).contains("lens-not-in-stock");
        }

        @Test
        void no_card_names_the_patient() {
            for (StoredPlan stored : day.plans()) {
                Patient patient = day.record()
                        .read()
                        .resource(Patient.class)
                        .withId(patient(stored))
                        .execute();
                assertThat(view(stored).toString())
                        .doesNotContain(patient.getNameFirstRep().getFamily());
            }
        }

        @Test
        void a_call_repeated_gives_the_same_card() {
            ObjectNode call = Hooks.call(day, "patient-view", patient(day.any("ready")));
            assertThat(Hooks.cards(Hooks.post(day, "patient-view", call.toString())))
                    .isEqualTo(Hooks.cards(Hooks.post(day, "patient-view", call.toString())));
        }

        @Test
        void what_was_prefetched_is_used_and_of_another_patient_is_not_shown() {
            StoredPlan ready = day.any("ready");
            String someone = "patient-elsewhere";
            ServiceRequest booking = ready.booking().copy();
            booking.setId("booking-elsewhere");
            booking.setSubject(new Reference("Patient/" + someone));
            JsonNode cards = Hooks.cards(day, "patient-view", someone, call -> {
                call.remove("fhirServer");
                ObjectNode prefetch = call.putObject("prefetch");
                prefetch.set("bookings", Hooks.json(Hooks.bundle(booking, ready.booking())));
                List.of("plans", "lenses", "findings").forEach(prefetch::putNull);
            });
            assertThat(cards).hasSize(1);
            assertThat(cards.path(0).path("summary").asText()).contains("not planned yet");
        }

        @Test
        void a_patient_without_a_booking_gets_no_card() {
            assertThat(Hooks.cards(day, "patient-view", "nobody-here", call -> {}))
                    .isEmpty();
        }

        @Test
        void what_can_be_had_nowhere_is_a_failed_precondition() {
            ObjectNode call = Hooks.call(day, "patient-view", patient(day.any("ready")));
            call.put("fhirServer", "https://elsewhere.test/fhir");
            assertThat(Hooks.post(day, "patient-view", call.toString()).statusCode())
                    .isEqualTo(412);
            call.remove("fhirServer");
            call.putObject("prefetch").putNull("bookings").putNull("plans").putNull("lenses");
            assertThat(Hooks.post(day, "patient-view", call.toString()).statusCode())
                    .isEqualTo(412);
        }

        @Test
        void a_first_page_of_several_is_not_taken_for_the_whole() {
            ObjectNode call = Hooks.call(day, "patient-view", patient(day.any("ready")));
            Bundle page = Hooks.bundle();
            page.addLink().setRelation("next").setUrl("https://elsewhere.test/fhir?page=2");
            call.putObject("prefetch").set("plans", Hooks.json(page));
            assertThat(Hooks.post(day, "patient-view", call.toString()).statusCode())
                    .isEqualTo(412);
        }
    }

    @Nested
    class When_an_operation_is_given_a_day {

        private JsonNode book(StoredPlan stored, String start) {
            Appointment appointment = new Appointment();
            appointment.setStatus(AppointmentStatus.PROPOSED).setStartElement(new InstantType(start));
            appointment
                    .addBasedOn()
                    .setReference(
                            "ServiceRequest/" + stored.booking().getIdElement().getIdPart());
            return Hooks.cards(day, "appointment-book", patient(stored), call -> Hooks.context(call)
                    .set("appointments", Hooks.json(Hooks.bundle(appointment))));
        }

        @Test
        void a_withheld_plan_warns() {
            JsonNode cards = book(day.any("withheld"), "2026-12-10T08:30:00Z");
            assertThat(cards).hasSize(1);
            assertThat(cards.path(0).path("indicator").asText()).isEqualTo("warning");
        }

        @Test
        void biometry_that_is_too_old_is_said() {
            StoredPlan old = day.plans().stream()
                    .filter(each -> each.found().contains(FindingCode.BIOMETRY_EXPIRED))
                    .findFirst()
                    .orElseThrow();
            assertThat(book(old, "2026-12-10T08:30:00Z").path(0).path("detail").asText())
                    .contains(Reason.plain(FindingCode.BIOMETRY_EXPIRED.remedy()));
        }

        @Test
        void a_ready_plan_for_that_day_needs_no_word_and_for_another_day_gets_one() {
            StoredPlan ready = day.any("ready");
            assertThat(book(ready, "2026-12-10T08:30:00Z")).isEmpty();
            JsonNode cards = book(ready, "2027-12-10T08:30:00Z");
            assertThat(cards).hasSize(1);
            assertThat(cards.path(0).path("summary").asText()).contains("2026-12-10", "2027-12-10");
        }

        @Test
        void an_appointment_for_something_else_needs_no_data_at_all() {
            ObjectNode call = Hooks.call(day, "appointment-book", "nobody-here");
            call.remove("fhirServer");
            Hooks.context(call).set("appointments", Hooks.json(Hooks.bundle(new Appointment())));
            assertThat(Hooks.cards(Hooks.post(day, "appointment-book", call.toString())))
                    .isEmpty();
        }
    }
}
