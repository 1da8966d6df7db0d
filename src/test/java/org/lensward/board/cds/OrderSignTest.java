package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.record.StoredPlan;

/** What is said of an order of lens surgery before it is signed. Every answer is held against {@link CdsRules}. */
@ExtendWith(ServedDayExtension.class)
class OrderSignTest {

    private final ServedDay day;

    OrderSignTest(ServedDay day) {
        this.day = day;
    }

    private JsonNode sign(ServiceRequest order) {
        String patient = order.getSubject().getReferenceElement().getIdPart();
        return Hooks.cards(day, "order-sign", patient, call -> Hooks.context(call)
                .set("draftOrders", Hooks.json(Hooks.bundle(order))));
    }

    private ServiceRequest draft(StoredPlan stored) {
        ServiceRequest draft = stored.booking().copy();
        draft.setId((String) null);
        return draft.setStatus(ServiceRequestStatus.DRAFT);
    }

    @Test
    void a_whole_order_passes_in_silence_even_before_it_has_a_day() {
        ServiceRequest order = draft(day.any("ready"));
        assertThat(sign(order)).isEmpty();
        assertThat(sign(order.copy().setOccurrence(null))).isEmpty();
    }

    @Test
    void an_order_without_its_eye_is_critical() {
        ServiceRequest order = draft(day.any("ready"));
        order.getBodySite().clear();
        JsonNode card = sign(order).path(0);
        assertThat(card.path("indicator").asText()).isEqualTo("critical");
        assertThat(card.path("detail").asText()).contains("Put the eye on the booking as bodySite.");
    }

    @Test
    void an_order_without_a_target_warns() {
        ServiceRequest order = draft(day.any("ready"));
        order.getExtension().clear();
        JsonNode card = sign(order).path(0);
        assertThat(card.path("indicator").asText()).isEqualTo("warning");
        assertThat(card.path("summary").asText()).contains("No target refraction");
    }

    @Test
    void the_day_asked_for_is_the_day_judged() {
        ServiceRequest order = draft(day.any("ready"));
        order.setOccurrence(new DateTimeType("2028-12-10"));
        assertThat(sign(order).path(0).path("indicator").asText()).isEqualTo("critical");
    }

    @Test
    void other_orders_need_no_data_at_all() {
        ObjectNode call = Hooks.call(day, "order-sign", "nobody-here");
        call.remove("fhirServer");
        Hooks.context(call).set("draftOrders", Hooks.json(Hooks.bundle(new ServiceRequest())));
        assertThat(Hooks.cards(Hooks.post(day, "order-sign", call.toString()))).isEmpty();
    }

    @Test
    void an_order_whose_patient_cannot_be_read_is_a_failed_precondition_and_another_patients_is_refused() {
        ServiceRequest order = draft(day.any("ready"));
        ObjectNode call = Hooks.call(day, "order-sign", "nobody-here");
        Hooks.context(call).set("draftOrders", Hooks.json(Hooks.bundle(order)));
        assertThat(Hooks.post(day, "order-sign", call.toString()).statusCode()).isEqualTo(400);
        order.getSubject().setReference("Patient/nobody-here");
        Hooks.context(call).set("draftOrders", Hooks.json(Hooks.bundle(order)));
        assertThat(Hooks.post(day, "order-sign", call.toString()).statusCode()).isEqualTo(412);
    }
}
