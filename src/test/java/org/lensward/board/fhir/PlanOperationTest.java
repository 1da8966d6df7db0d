package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;
import org.lensward.record.ProfileValidator;
import org.lensward.record.StoredPlan;

/** {@code $plan} over HTTP. Statuses by FHIR R4, "RESTful API" (content negotiation, create) and "Operations" (executing an operation). */
@ExtendWith(ServedDayExtension.class)
class PlanOperationTest {

    private static final Path ORDINARY = Path.of("demo-data/an-ordinary-eye");

    private final ServedDay day;

    PlanOperationTest(ServedDay day) {
        this.day = day;
    }

    private static String text(Resource resource) {
        return ServedDay.FHIR.newJsonParser().encodeResourceToString(resource);
    }

    private static Bundle ordinary(String file) throws IOException {
        return ServedDay.FHIR.newJsonParser().parseResource(Bundle.class, Files.readString(ORDINARY.resolve(file)));
    }

    private HttpRequest.Builder plan(String body) {
        return day.to("/fhir/$plan")
                .header("Content-Type", "application/fhir+json")
                .POST(BodyPublishers.ofString(body));
    }

    private Bundle planned(String body) {
        HttpResponse<String> answer = day.send(plan(body));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("application/fhir+json");
        Bundle bundle = ServedDay.FHIR.newJsonParser().parseResource(Bundle.class, answer.body());
        assertThat(bundle.getType()).isEqualTo(BundleType.TRANSACTION);
        return bundle;
    }

    private void refused(HttpRequest.Builder request, int status) {
        HttpResponse<String> answer = day.send(request);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("application/fhir+json");
        OperationOutcome outcome = ServedDay.FHIR.newJsonParser().parseResource(OperationOutcome.class, answer.body());
        assertThat(ProfileValidator.errors(outcome)).isEmpty();
        assertThat(outcome.getIssueFirstRep().getDiagnostics()).isNotBlank().doesNotContain("Exception");
    }

    private String booking(String reference) {
        Parameters parameters = new Parameters();
        parameters.addParameter().setName("booking").setValue(new Reference(reference));
        return text(parameters);
    }

    private static Stream<String> names(Bundle bundle) {
        return bundle.getEntry().stream()
                .map(entry -> entry.getRequest().getUrl())
                .filter(url -> !url.startsWith("Provenance"));
    }

    @Test
    void a_bundle_gives_the_transaction_of_the_worked_example_and_writes_nothing() throws IOException {
        List<String> before = versions();
        List<String> expected = names(ordinary("out.json")).toList();
        assertThat(names(planned(text(ordinary("in.json"))))).containsExactlyElementsOf(expected);
        Parameters parameters = new Parameters();
        parameters.addParameter().setName("bundle").setResource(ordinary("in.json"));
        assertThat(names(planned(text(parameters)))).containsExactlyElementsOf(expected);
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
        assertThat(planned(booking(name)).getEntry()).isEmpty();
        assertThat(planned(booking(day.recordUrl() + "/" + name)).getEntry()).isEmpty();
    }

    @Test
    void a_booking_not_planned_yet_has_its_whole_plan_to_post() {
        put("booking-fresh", ServiceRequestStatus.ACTIVE);
        Bundle plan = planned(booking("ServiceRequest/booking-fresh"));
        put("booking-fresh", ServiceRequestStatus.COMPLETED);
        assertThat(names(plan)).anyMatch(url -> url.startsWith("Procedure/plan-booking-fresh"));
        assertThat(plan.getEntry()).allSatisfy(entry -> assertThat(ProfileValidator.errors(entry.getResource()))
                .isEmpty());
    }

    @Test
    void a_booking_that_waits_is_not_planned_and_a_withdrawn_one_has_nothing_to_take_back() {
        put("booking-on-hold", ServiceRequestStatus.ONHOLD);
        refused(plan(booking("ServiceRequest/booking-on-hold")), 422);
        put("booking-on-hold", ServiceRequestStatus.REVOKED);
        assertThat(planned(booking("ServiceRequest/booking-on-hold")).getEntry())
                .isEmpty();
    }

    @Test
    void a_plan_whose_operation_has_begun_is_left_alone() {
        put("booking-begun", ServiceRequestStatus.ACTIVE);
        Bundle plan = planned(booking("ServiceRequest/booking-begun"));
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
        refused(plan(booking("ServiceRequest/booking-begun")), 422);
        put("booking-begun", ServiceRequestStatus.COMPLETED);
    }

    private void put(String name, ServiceRequestStatus status) {
        ServiceRequest copy = day.any("ready").booking().copy();
        copy.setId(name);
        day.record().update().resource(copy.setStatus(status)).execute();
    }

    @Test
    void the_bundle_of_two_bookings_is_one_transaction() throws IOException {
        Bundle both = ordinary("in.json");
        ServedDay.FHIR
                .newJsonParser()
                .parseResource(Bundle.class, Files.readString(Path.of("demo-data/a-long-eye/in.json")))
                .getEntry()
                .forEach(both::addEntry);
        assertThat(planned(text(both)).getEntry().stream().filter(each -> each.getResource() instanceof Procedure))
                .hasSize(2);
    }

    @Test
    void what_is_no_fhir_or_not_what_is_asked_for_is_a_bad_request() {
        refused(plan("{"), 400);
        refused(plan(""), 400);
        refused(plan("{\"resourceType\":\"Bundle\",\"type\":\"nonsense\"}"), 400);
        refused(plan("{\"resourceType\":\"Patient\"}"), 400);
        refused(plan("{\"resourceType\":\"Parameters\"}"), 400);
        refused(plan(booking("ServiceRequest/x").replace("booking", "order")), 400);
        refused(plan(booking("Patient/patient-01")), 400);
        refused(plan(booking("ServiceRequest/x?_include=*")), 400);
    }

    @Test
    void what_is_not_in_the_record_is_not_found() {
        refused(plan(booking("ServiceRequest/no-such-booking")), 404);
        refused(plan(booking("https://elsewhere.test/fhir/ServiceRequest/booking-01")), 404);
    }

    @Test
    void what_cannot_be_planned_is_unprocessable() throws IOException {
        refused(plan("{\"resourceType\":\"Bundle\",\"type\":\"collection\"}"), 422);
        Bundle nobody = ordinary("in.json");
        nobody.getEntry().removeIf(entry -> entry.getResource().fhirType().equals("Patient"));
        refused(plan(text(nobody)), 422);
        ServiceRequest other = new ServiceRequest();
        other.setId("booking-of-something-else");
        other.setStatus(ServiceRequestStatus.ACTIVE)
                .setIntent(ServiceRequest.ServiceRequestIntent.ORDER)
                .setSubject(new Reference("Patient/patient-01"));
        day.record().update().resource(other).execute();
        refused(plan(booking("ServiceRequest/booking-of-something-else")), 422);
    }

    @Test
    void more_than_the_limit_is_too_large() {
        refused(plan(" ".repeat(250_000)), 413);
        refused(
                day.to("/fhir/$plan")
                        .header("Content-Type", "application/fhir+json")
                        .POST(BodyPublishers.fromPublisher(BodyPublishers.ofString(" ".repeat(250_000)))),
                413);
    }

    @ParameterizedTest
    @CsvSource({
        "application/fhir+json, 200",
        "application/json, 200",
        "*/*, 200",
        "application/*;q=0.5, 200",
        "'application/fhir+xml, application/fhir+json;q=0.9', 200",
        "application/fhir+json;fhirVersion=4.0, 200",
        "application/fhir+json;fhirVersion=5.0, 406",
        "application/fhir+xml, 406",
        "application/fhir+json;q=0, 406",
        "text/html, 406",
        "nonsense, 406"
    })
    void answers_are_json_or_refused(String accept, int status) throws IOException {
        HttpRequest.Builder request = plan(text(ordinary("in.json"))).header("Accept", accept);
        if (status == 200) {
            assertThat(day.send(request).statusCode()).isEqualTo(200);
        } else {
            refused(request, status);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "application/json;charset=UTF-8, 422",
        "application/fhir+json;fhirVersion=4.0, 422",
        "application/fhir+json;fhirVersion=3.0, 415",
        "application/fhir+xml, 415",
        "text/plain, 415",
        "nonsense, 415"
    })
    void only_json_of_r4_is_read(String type, int status) {
        refused(
                day.to("/fhir/$plan")
                        .header("Content-Type", type)
                        .POST(BodyPublishers.ofString("{\"resourceType\":\"Bundle\",\"type\":\"collection\"}")),
                status);
    }

    @Test
    void a_format_asked_for_in_the_address_comes_before_accept() {
        String body = "{\"resourceType\":\"Bundle\",\"type\":\"collection\"}";
        refused(
                day.to("/fhir/$plan?_format=xml")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(body)),
                406);
        refused(
                day.to("/fhir/$plan?_format=application/fhir+json")
                        .header("Content-Type", "application/json")
                        .header("Accept", "text/html")
                        .POST(BodyPublishers.ofString(body)),
                422);
    }

    @Test
    void only_posts_are_answered() {
        refused(day.to("/fhir/$plan").GET(), 405);
    }
}
