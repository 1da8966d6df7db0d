package org.lensward.board.cds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.net.URI;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Test;
import org.lensward.board.ServedDay;
import org.lensward.flow.AdapterSettings.RecordServer;
import org.lensward.flow.RecordClient;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;
import org.springframework.http.HttpStatus;

/** Cards on their own. Length and Markdown by CDS Hooks 2.0, "Card attributes". */
class PlanCardsTest {

    private static final URI NOWHERE = URI.create("http://localhost:1/fhir");

    private static HookCall call(String server) {
        return new HookCall(
                "patient-view",
                "an-instance",
                Optional.of(URI.create(server)),
                JsonNodeFactory.instance.objectNode().put("patientId", "p1"),
                Map.of());
    }

    private static Bundle booked() {
        ServiceRequest booking = new ServiceRequest();
        booking.setId("b1");
        booking.setStatus(ServiceRequestStatus.ACTIVE)
                .setCode(new CodeableConcept(new Coding(Systems.SNOMED, "415089008", null)))
                .setSubject(new Reference("Patient/p1"))
                .setOccurrence(new DateTimeType("2026-12-10T08:30:00Z"));
        Bundle bundle = new Bundle();
        bundle.addEntry().setResource(booking);
        return bundle;
    }

    @Test
    void a_lens_that_is_short_has_a_card_of_its_own_and_its_booking_is_remembered() {
        GivenCards given = new GivenCards();
        PlanCards cards = new PlanCards(
                booking -> Optional.of(List.of(new Reason(booking + " lacks its *sulcus* lens.", "Order it."))), given);
        StoredPlan stored = PatientPlans.of(booked(), "p1").get(0);
        Card card = cards.shortage(call(NOWHERE.toString()), stored).orElseThrow();
        assertThat(card.indicator()).isEqualTo(Indicator.WARNING);
        assertThat(card.detail()).isEqualTo("- **ServiceRequest/b1 lacks its \\*sulcus\\* lens.** Order it.");
        assertThat(given.booking(card.uuid())).contains("ServiceRequest/b1");
        assertThat(new PlanCards(booking -> Optional.of(List.of()), given).shortage(call(NOWHERE.toString()), stored))
                .isEmpty();
    }

    @Test
    void a_bank_that_does_not_answer_is_not_taken_for_a_full_one() {
        PlanCards cards = new PlanCards(booking -> Optional.empty(), new GivenCards());
        StoredPlan stored = PatientPlans.of(booked(), "p1").get(0);
        assertThat(cards.shortage(call(NOWHERE.toString()), stored)
                        .orElseThrow()
                        .summary())
                .contains("not known");
    }

    @Test
    void an_operation_that_has_begun_has_no_card() {
        Bundle begun = booked();
        Procedure operation = new Procedure().setStatus(ProcedureStatus.INPROGRESS);
        operation.setId("plan-b1");
        begun.addEntry().setResource(operation);
        assertThat(PatientPlans.of(begun, "p1")).isEmpty();
        operation.setStatus(ProcedureStatus.NOTDONE);
        assertThat(PatientPlans.of(begun, "p1")).hasSize(1);
        assertThat(PatientPlans.of(begun, "p2")).isEmpty();
    }

    @Test
    void days_are_read_as_written() {
        ServiceRequest booking = (ServiceRequest) booked().getEntryFirstRep().getResource();
        assertThat(BookedDay.of(booking)).isEqualTo("2026-12-10");
        assertThat(BookedDay.of(booking.setOccurrence(new DateTimeType("2026-12"))))
                .isEqualTo("2026-12");
        assertThat(BookedDay.of(new ServiceRequest())).isEqualTo(BookedDay.UNKNOWN);
        Period period = new Period();
        assertThat(BookedDay.of(booking.setOccurrence(period))).isEqualTo(BookedDay.UNKNOWN);
        period.setStartElement(new DateTimeType("2026-12-11"));
        assertThat(BookedDay.of(booking)).isEqualTo("2026-12-11");
    }

    @Test
    void a_summary_stays_under_140_characters() {
        String whole = "a".repeat(139);
        assertThat(Card.of("x", Indicator.INFO, whole, "").summary()).isEqualTo(whole);
        assertThat(Card.of("x", Indicator.INFO, whole + "a", "").summary())
                .hasSize(139)
                .endsWith("...");
    }

    @Test
    void words_of_the_record_are_shown_and_do_no_more() {
        assertThat(Reason.plain("[here](https://x.test)\n# <b>*now*</b>"))
                .isEqualTo("\\[here\\](https://x.test) \\# \\<b\\>\\*now\\*\\</b\\>");
        List<Reason> many = new ArrayList<>(Collections.nCopies(7, new Reason("Found.", "Do.")));
        assertThat(Reason.list(many).lines()).hasSize(6).endsWith("- and 2 more");
        assertThat(Reason.list(many.subList(0, 5)).lines()).hasSize(5);
    }

    @Test
    void a_record_that_does_not_answer_is_a_failed_precondition() {
        RecordClient away = new RecordClient(ServedDay.FHIR, new RecordServer(NOWHERE, Duration.ofSeconds(2)));
        HookData data = new HookData(ServedDay.FHIR, away, NOWHERE);
        assertThatThrownBy(() -> data.gather(call(NOWHERE + "/"), PatientPlans.TEMPLATES))
                .isInstanceOfSatisfying(Refusal.class, refused -> {
                    assertThat(refused.getStatusCode()).isEqualTo(HttpStatus.PRECONDITION_FAILED);
                    assertThat(refused.getBody().getDetail()).contains("does not answer");
                });
    }

    @Test
    void only_the_latest_cards_are_remembered() {
        GivenCards given = new GivenCards();
        given.remember("first", "ServiceRequest/b1");
        for (int card = 0; card < 10_000; card++) {
            given.remember("card-" + card, "ServiceRequest/b2");
        }
        assertThat(given.booking("first")).isEmpty();
        assertThat(given.booking("card-0")).contains("ServiceRequest/b2");
    }
}
