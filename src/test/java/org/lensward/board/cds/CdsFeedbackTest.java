package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.UUID;
import org.hl7.fhir.r4.model.AuditEvent;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.record.ProfileValidator;
import org.lensward.record.StoredPlan;

/** What became of a card (CDS Hooks 2.0, "Feedback"), as AuditEvents in the record. */
@ExtendWith(ServedDayExtension.class)
class CdsFeedbackTest {

    private final ServedDay day;

    CdsFeedbackTest(ServedDay day) {
        this.day = day;
    }

    private static String said(String card, String outcome, String further) {
        return "{\"feedback\":[{\"card\":\"" + card + "\",\"outcome\":\"" + outcome
                + "\",\"outcomeTimestamp\":\"2026-11-25T10:00:00Z\"" + further + "}]}";
    }

    private int post(String body) {
        return Hooks.post(day, "patient-view/feedback", body).statusCode();
    }

    private List<AuditEvent> written(String card) {
        return day
                .record()
                .search()
                .forResource(AuditEvent.class)
                .count(500)
                .returnBundle(Bundle.class)
                .execute()
                .getEntry()
                .stream()
                .map(entry -> (AuditEvent) entry.getResource())
                .filter(event -> event.getEntityFirstRep().getDetail().stream()
                        .anyMatch(
                                detail -> detail.getValueStringType().getValue().equals(card)))
                .toList();
    }

    @Test
    void an_overridden_card_is_kept_with_its_booking_and_reason_and_without_the_comment() {
        StoredPlan withheld = day.any("withheld");
        ObjectNode call = Hooks.call(
                day,
                "patient-view",
                withheld.booking().getSubject().getReferenceElement().getIdPart());
        String card = Hooks.cards(Hooks.post(day, "patient-view", call.toString()))
                .path(0)
                .path("uuid")
                .asText();
        String body = said(
                card,
                "overridden",
                ",\"overrideReason\":{\"reason\":{\"system\":\"https://ward.test/reasons\",\"code\":\"known\"},"
                        + "\"userComment\":\"Told Mr Example\"}");
        assertThat(post(body)).isEqualTo(200);
        assertThat(post(body)).as("said again, kept once").isEqualTo(200);
        AuditEvent event = written(card).get(0);
        assertThat(written(card)).hasSize(1);
        assertThat(event.getEntityFirstRep().getWhat().getReference())
                .isEqualTo("ServiceRequest/" + withheld.booking().getIdElement().getIdPart());
        assertThat(event.getAgentFirstRep().getAltId()).isEqualTo(CallingClients.WITH_FILE);
        String text = ServedDay.FHIR.newJsonParser().encodeResourceToString(event);
        assertThat(text)
                .contains("overridden", "https://ward.test/reasons|known")
                .doesNotContain("Example", "Patient/");
        assertThat(ProfileValidator.errors(event)).isEmpty();
    }

    @Test
    void a_card_from_before_a_restart_is_kept_by_its_own_name() {
        String card = UUID.randomUUID().toString();
        assertThat(post(said(card, "accepted", ",\"acceptedSuggestions\":[{\"id\":\"s\"}]")))
                .isEqualTo(200);
        assertThat(written(card)).hasSize(1);
        assertThat(written(card).get(0).getEntityFirstRep().hasWhat()).isFalse();
    }

    @Test
    void feedback_may_be_none_and_its_token_made_out_to_its_own_address() {
        String token = CallingClients.token("patient-view/feedback");
        assertThat(Hooks.post(day, "patient-view/feedback", "{\"feedback\":[]}", token)
                        .statusCode())
                .isEqualTo(200);
        String forFeedback = CallingClients.token("patient-view/feedback");
        assertThat(Hooks.post(day, "patient-view", "{}", forFeedback).statusCode())
                .isEqualTo(401);
    }

    @Test
    void malformed_feedback_is_refused() {
        String card = UUID.randomUUID().toString();
        assertThat(post("{}")).isEqualTo(400);
        assertThat(post(said("no-uuid", "accepted", ""))).isEqualTo(400);
        assertThat(post(said(card, "ignored", ""))).isEqualTo(400);
        assertThat(post(said(card, "accepted", "").replace("10:00", "noon"))).isEqualTo(400);
        assertThat(Hooks.post(day, "nothing/feedback", "{}").statusCode()).isEqualTo(404);
    }
}
