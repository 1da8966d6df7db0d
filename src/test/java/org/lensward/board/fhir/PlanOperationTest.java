package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.record.ProfileValidator;
import org.lensward.record.StoredPlan;

/** {@code $plan} over HTTP. Statuses by FHIR R4, "RESTful API" (content negotiation, create) and "Operations" (executing an operation). */
@ExtendWith(ServedDayExtension.class)
class PlanOperationTest {

    private final ServedDay day;
    private final PlanCalls calls;

    PlanOperationTest(ServedDay day) {
        this.day = day;
        this.calls = new PlanCalls(day);
    }

    private static Stream<String> names(Bundle bundle) {
        return bundle.getEntry().stream()
                .map(entry -> entry.getRequest().getUrl())
                .filter(url -> !url.startsWith("Provenance"));
    }

    @Test
    void a_bundle_gives_the_transaction_of_the_worked_example_and_writes_nothing() throws IOException {
        List<String> before = versions();
        List<String> expected = names(PlanCalls.ordinary("out.json")).toList();
        assertThat(names(calls.planned(PlanCalls.text(PlanCalls.ordinary("in.json")))))
                .containsExactlyElementsOf(expected);
        Parameters parameters = new Parameters();
        parameters.addParameter().setName("bundle").setResource(PlanCalls.ordinary("in.json"));
        assertThat(names(calls.planned(PlanCalls.text(parameters)))).containsExactlyElementsOf(expected);
        assertThat(versions()).isEqualTo(before);
    }

    private List<String> versions() {
        return day.plans().stream()
                .map(plan ->
                        plan.plan().map(each -> each.getMeta().getVersionId()).orElse("none"))
                .toList();
    }

    @Test
    void a_booking_of_the_record_whose_plan_stands_has_nothing_to_post() {
        StoredPlan ready = day.any("ready");
        String name = "ServiceRequest/" + ready.booking().getIdElement().getIdPart();
        assertThat(calls.planned(PlanCalls.booking(name)).getEntry()).isEmpty();
        assertThat(calls.planned(PlanCalls.booking(day.recordUrl() + "/" + name))
                        .getEntry())
                .isEmpty();
    }

    @Test
    void a_booking_not_planned_yet_has_its_whole_plan_to_post() {
        put("booking-fresh", ServiceRequestStatus.ACTIVE);
        Bundle plan = calls.planned(PlanCalls.booking("ServiceRequest/booking-fresh"));
        put("booking-fresh", ServiceRequestStatus.COMPLETED);
        assertThat(names(plan)).anyMatch(url -> url.startsWith("Procedure/plan-booking-fresh"));
        assertThat(ProfileValidator.errors(plan)).isEmpty();
    }

    @Test
    void a_booking_that_waits_is_not_planned_and_a_withdrawn_one_has_nothing_to_take_back() {
        put("booking-on-hold", ServiceRequestStatus.ONHOLD);
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/booking-on-hold")), 422);
        put("booking-on-hold", ServiceRequestStatus.REVOKED);
        assertThat(calls.planned(PlanCalls.booking("ServiceRequest/booking-on-hold"))
                        .getEntry())
                .isEmpty();
    }

    @Test
    void a_plan_whose_operation_has_begun_is_left_alone() {
        put("booking-begun", ServiceRequestStatus.ACTIVE);
        Bundle plan = calls.planned(PlanCalls.booking("ServiceRequest/booking-begun"));
        day.record().transaction().withBundle(plan).execute();
        Procedure operation = day.record()
                .read()
                .resource(Procedure.class)
                .withId("plan-booking-begun")
                .execute();
        day.record()
                .update()
                .resource(operation.setStatus(ProcedureStatus.INPROGRESS))
                .execute();
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/booking-begun")), 422);
        put("booking-begun", ServiceRequestStatus.COMPLETED);
    }

    private void put(String name, ServiceRequestStatus status) {
        ServiceRequest copy = day.any("ready").booking().copy();
        copy.setId(name);
        day.record().update().resource(copy.setStatus(status)).execute();
    }

    @Test
    void the_bundle_of_two_bookings_is_one_transaction() throws IOException {
        Bundle both = PlanCalls.ordinary("in.json");
        ServedDay.FHIR
                .newJsonParser()
                .parseResource(Bundle.class, Files.readString(Path.of("demo-data/a-long-eye/in.json")))
                .getEntry()
                .forEach(both::addEntry);
        assertThat(calls.planned(PlanCalls.text(both)).getEntry().stream()
                        .filter(each -> each.getResource() instanceof Procedure))
                .hasSize(2);
    }

    @Test
    void what_is_no_fhir_or_not_what_is_asked_for_is_a_bad_request() {
        calls.refused(calls.plan("{"), 400);
        calls.refused(calls.plan(""), 400);
        calls.refused(calls.plan("{\"resourceType\":\"Bundle\",\"type\":\"nonsense\"}"), 400);
        calls.refused(calls.plan("{\"resourceType\":\"Patient\"}"), 400);
        calls.refused(calls.plan("{\"resourceType\":\"Parameters\"}"), 400);
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/x").replace("booking", "order")), 400);
        calls.refused(calls.plan(PlanCalls.booking("Patient/patient-01")), 400);
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/x?_include=*")), 400);
    }

    @Test
    void what_is_not_in_the_record_is_not_found() {
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/no-such-booking")), 404);
        calls.refused(calls.plan(PlanCalls.booking("https://elsewhere.test/fhir/ServiceRequest/booking-01")), 404);
    }

    @Test
    void what_cannot_be_planned_is_unprocessable() throws IOException {
        calls.refused(calls.plan("{\"resourceType\":\"Bundle\",\"type\":\"collection\"}"), 422);
        Bundle nobody = PlanCalls.ordinary("in.json");
        nobody.getEntry().removeIf(entry -> entry.getResource().fhirType().equals("Patient"));
        calls.refused(calls.plan(PlanCalls.text(nobody)), 422);
        ServiceRequest other = new ServiceRequest();
        other.setId("booking-of-something-else");
        other.setStatus(ServiceRequestStatus.ACTIVE)
                .setIntent(ServiceRequest.ServiceRequestIntent.ORDER)
                .setSubject(new Reference("Patient/patient-01"));
        day.record().update().resource(other).execute();
        calls.refused(calls.plan(PlanCalls.booking("ServiceRequest/booking-of-something-else")), 422);
    }
}
