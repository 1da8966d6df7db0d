package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Publication;
import org.lensward.record.StoredPlan;

/** The whole day through a real record, a real broker and the real routes: planned, left alone, planned again when something changes. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TheatreDayTest {

    private static final Duration LONG = Duration.ofSeconds(120);

    private static RunningDay day;
    private static Adapter adapter;

    @BeforeAll
    static void open() throws IOException {
        day = new RunningDay("theatre-day");
        adapter = day.adapter();
        RunningDay.await("every booking has a plan", LONG, day::allPlanned);
    }

    @AfterAll
    static void close() {
        adapter.close();
        day.close();
    }

    @Test
    @Order(1)
    void every_booking_has_a_plan_in_its_intended_state() {
        Map<String, Long> states = day.plans().stream()
                .map(stored -> StoredPlan.state(stored.plan().orElseThrow()))
                .collect(Collectors.groupingBy(state -> state, Collectors.counting()));
        assertThat(states).isEqualTo(Map.of("ready", 3L, "provisional", 4L, "withheld", 5L));
    }

    @Test
    @Order(2)
    void everything_written_is_valid_and_a_withheld_plan_asks_for_no_lens() {
        for (StoredPlan stored : day.plans()) {
            boolean withheld = StoredPlan.state(stored.plan().orElseThrow()).equals("withheld");
            assertThat(stored.primary().isEmpty()).isEqualTo(withheld);
        }
        for (Class<? extends Resource> type :
                List.of(DeviceRequest.class, Task.class, RiskAssessment.class, DetectedIssue.class, Provenance.class)) {
            all(type).forEach(each -> assertThat(ProfileValidator.errors(each))
                    .as(each.getId())
                    .isEmpty());
        }
    }

    @Test
    @Order(3)
    void planning_again_writes_nothing() {
        Map<String, String> before = versions();
        StoredPlan any = day.plans().get(0);
        Gatherer gatherer = new Gatherer(adapter.record());
        String name = "ServiceRequest/" + any.booking().getIdElement().getIdPart() + " "
                + any.booking().getSubject().getReference();
        assertThat(new BookingPlanning(new BundlePlanning(Fhir.r4(), PolicyFile.shipped(), Clock.systemUTC()))
                        .plan(gatherer.gather(name), name))
                .isEqualTo(new Publication.Nothing(Publication.Reason.UNCHANGED));
        assertThat(versions()).isEqualTo(before);
    }

    @Test
    @Order(4)
    void a_changed_measurement_replaces_the_plan_and_voids_its_lens_check() {
        StoredPlan before = ordinary();
        Task check = check(before);
        Observation length = length(before);
        length.getValueQuantity().setValue(length.getValueQuantity().getValue().add(new BigDecimal("0.60")));
        day.client().update().resource(length).execute();
        RunningDay.await("a new plan", LONG, () -> !fingerprint(ordinary()).equals(fingerprint(before)));
        assertThat(read(Task.class, check).getStatus()).isEqualTo(Task.TaskStatus.CANCELLED);
        assertThat(read(Task.class, check).getStatusReason().getText()).contains("replaced");
        assertThat(power(ordinary())).isLessThan(power(before));
        assertThat(all(Task.class)
                        .filter(task -> task.getStatus() == Task.TaskStatus.REQUESTED)
                        .filter(task -> task.getBasedOnFirstRep()
                                .getReference()
                                .endsWith(before.booking().getIdElement().getIdPart())))
                .hasSize(1);
    }

    @Test
    @Order(5)
    void a_withdrawn_booking_takes_its_plan_back() {
        StoredPlan before = ordinary();
        ServiceRequest booking = before.booking().copy();
        booking.setId(booking.getIdElement().toUnqualifiedVersionless());
        day.client()
                .update()
                .resource(booking.setStatus(ServiceRequestStatus.REVOKED))
                .execute();
        Procedure plan = before.plan().orElseThrow();
        RunningDay.await(
                "the plan is taken back",
                LONG,
                () -> read(Procedure.class, plan).getStatus() == Procedure.ProcedureStatus.NOTDONE);
        assertThat(read(DeviceRequest.class, before.primary().orElseThrow()).getStatus())
                .isEqualTo(DeviceRequest.DeviceRequestStatus.REVOKED);
        day.client()
                .update()
                .resource(booking.setStatus(ServiceRequestStatus.ACTIVE))
                .execute();
        RunningDay.await("the plan is made again", LONG, day::allPlanned);
    }

    private static StoredPlan ordinary() {
        return day.plans().stream()
                .filter(stored -> stored.plan()
                        .filter(plan -> StoredPlan.state(plan).equals("ready"))
                        .isPresent())
                .min(Comparator.comparing(
                        stored -> stored.booking().getIdElement().getIdPart()))
                .orElseThrow();
    }

    private static String fingerprint(StoredPlan stored) {
        return stored.plan()
                .orElseThrow()
                .getExtensionString("https://lensward.org/fhir/StructureDefinition/plan-fingerprint");
    }

    private static double power(StoredPlan stored) {
        return stored.primary()
                .orElseThrow()
                .getParameter()
                .get(0)
                .getValueQuantity()
                .getValue()
                .doubleValue();
    }

    private static Task check(StoredPlan stored) {
        return all(Task.class)
                .filter(task -> task.getStatus() == Task.TaskStatus.REQUESTED)
                .filter(task -> task.getBasedOnFirstRep()
                        .getReference()
                        .endsWith("/" + stored.booking().getIdElement().getIdPart()))
                .findFirst()
                .orElseThrow();
    }

    private static Observation length(StoredPlan stored) {
        return stored.chosen().orElseThrow().getDerivedFrom().stream()
                .map(reference -> day.client()
                        .read()
                        .resource(Observation.class)
                        .withUrl(reference.getReference())
                        .execute())
                .filter(observation -> observation.hasValueQuantity())
                .findFirst()
                .orElseThrow();
    }

    private static <T extends Resource> T read(Class<T> type, T resource) {
        return day.client()
                .read()
                .resource(type)
                .withId(resource.getIdElement().getIdPart())
                .execute();
    }

    private static <T extends Resource> Stream<T> all(Class<T> type) {
        IGenericClient client = day.client();
        Bundle found = client.search()
                .forResource(type)
                .count(1000)
                .returnBundle(Bundle.class)
                .execute();
        return found.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .map(type::cast);
    }

    private static Map<String, String> versions() {
        return day.plans().stream()
                .map(stored -> stored.plan().orElseThrow())
                .collect(Collectors.toMap(plan -> plan.getIdElement().getIdPart(), plan -> plan.getMeta()
                        .getVersionId()));
    }
}
