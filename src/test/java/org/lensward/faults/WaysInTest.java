package org.lensward.faults;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.faults.Fault.At.GATHER;
import static org.lensward.faults.Fault.At.PUBLISH;

import java.math.BigDecimal;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Subscription;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.faults.Fault.Sleeps;
import org.lensward.flow.FaultyFlow;
import org.lensward.flow.Reconciliation;
import org.lensward.record.StoredPlan;

/** An adapter that looks of itself but once an hour: whatever happens sooner, something woke it. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class WaysInTest {

    private static final String SECRET = "a word between the two";
    private static final Duration LONG = Duration.ofSeconds(60);

    private static EmbeddedRecord record;
    private static MisbehavingRecord between;
    private static FaultyBookings bookings;
    private static FaultyFlow flow;

    @BeforeAll
    static void start() throws Exception {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        between = new MisbehavingRecord(record.baseUrl());
        bookings = new FaultyBookings(record.baseUrl());
        bookings.add("first");
        Map<String, Object> settings = new HashMap<>(Map.of(
                "lensward.record.url", between.url(),
                "lensward.watch.interval", "1h",
                "lensward.reconcile.every", "500ms",
                "lensward.reconcile.at", "",
                "lensward.hint.secret", SECRET,
                "lensward.hint.endpoint", "https://adapter.invalid/api/hints",
                "server.port", "0",
                "spring.artemis.embedded.data-directory",
                        Files.createTempDirectory("lensward-queue").toString()));
        settings.put("server.address", "127.0.0.1");
        settings.put("lensward.access.open", "true");
        flow = FaultyFlow.serve(settings);
        flow.awaitPlan(() -> planned("first"));
    }

    @AfterAll
    static void stop() {
        flow.close();
        between.close();
        record.close();
    }

    private static boolean planned(String name) {
        return bookings.standing(Procedure.class, name).stream()
                .anyMatch(each -> ((Procedure) each).getStatus() == Procedure.ProcedureStatus.PREPARATION);
    }

    private static String version(String name) {
        return bookings.standing(Procedure.class, name).get(0).getMeta().getVersionId();
    }

    private static String fingerprint(String name) {
        return StoredPlan.fingerprint(
                (Procedure) bookings.standing(Procedure.class, name).get(0));
    }

    private static int post(String path, String secret, String body) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + flow.port() + path))
                .header("X-Lensward-Hint", secret)
                .header("Content-Type", "application/fhir+json")
                .POST(BodyPublishers.ofString(body))
                .build();
        return HttpClient.newHttpClient()
                .send(request, BodyHandlers.discarding())
                .statusCode();
    }

    private static void longer(String name) {
        Observation length = bookings.read(Observation.class, "axial-length-right-" + name);
        length.getValueQuantity().setValue(length.getValueQuantity().getValue().add(new BigDecimal("0.40")));
        bookings.update(length);
    }

    @Test
    @Order(1)
    void a_hint_without_the_secret_wakes_nobody() throws Exception {
        bookings.add("hinted");
        assertThat(post("/api/hints", "another word", "")).isEqualTo(401);
        assertThat(post("/api/hints", "", "")).isEqualTo(401);
        Thread.sleep(1_000);
        assertThat(between.count(GATHER, "hinted")).isZero();
    }

    /** FHIR R4 Subscription, channel rest-hook: the body is empty, or a resource; neither is believed. */
    @Test
    @Order(2)
    void a_hint_with_the_secret_has_the_record_looked_at_and_its_body_is_not_believed() throws Exception {
        String lie = "{\"resourceType\":\"ServiceRequest\",\"id\":\"booking-never\"}";
        assertThat(post("/api/hints", SECRET, lie)).isEqualTo(204);
        flow.awaitPlan(() -> planned("hinted"));
        assertThat(between.count(GATHER, "never")).isZero();
    }

    @Test
    @Order(3)
    void one_booking_is_planned_again_by_hand_and_an_unchanged_plan_is_left_alone() throws Exception {
        String written = version("first");
        int asked = between.count(GATHER, "first");
        assertThat(post("/api/bookings/booking-first/replan", "", "")).isEqualTo(202);
        flow.awaitPlan(() -> between.count(GATHER, "first") > asked);
        flow.awaitQuiet(LONG);
        assertThat(version("first")).isEqualTo(written);
        assertThat(post("/api/bookings/booking-nobody/replan", "", "")).isEqualTo(404);
    }

    @Test
    @Order(4)
    void the_nightly_comparison_finds_what_the_watcher_could_not_see() throws Exception {
        String before = fingerprint("first");
        between.hidesChanges(true);
        longer("first");
        post("/api/hints", SECRET, "");
        flow.awaitQuiet(LONG);
        assertThat(fingerprint("first")).as("not seen").isEqualTo(before);
        Reconciliation.Report report = flow.reconcile();
        assertThat(report.missed()).containsExactly("ServiceRequest/booking-first");
        assertThat(report.bookings()).isEqualTo(2);
        assertThat(report.unclear()).isEmpty();
        flow.awaitPlan(() -> !fingerprint("first").equals(before));
        flow.awaitQuiet(LONG);
        assertThat(flow.reconcile().missed()).as("once is enough").isEmpty();
        between.hidesChanges(false);
    }

    @Test
    @Order(5)
    void a_dry_run_writes_nothing_says_what_it_would_write_and_writes_it_afterwards() throws Exception {
        flow.dryRun(true);
        bookings.add("dry");
        longer("hinted");
        post("/api/hints", SECRET, "");
        flow.awaitPlan(
                () -> !flow.report("dry").isEmpty() && !flow.report("hinted").isEmpty());
        assertThat(planned("dry")).isFalse();
        assertThat(flow.report("dry"))
                .contains("ServiceRequest/booking-dry ready", "Procedure/plan-booking-dry new", "Task/")
                .doesNotContain("Patient");
        assertThat(flow.report("hinted")).contains("Procedure/plan-booking-hinted changed: extension");
        flow.dryRun(false);
        post("/api/hints", SECRET, "");
        flow.awaitPlan(() -> planned("dry"));
    }

    @Test
    @Order(6)
    void a_start_asks_what_the_record_offers_and_writes_the_subscriptions_that_were_asked_for() {
        assertThat(flow.mayWork()).as("HAPI offers all that is indispensable").isTrue();
        Subscription subscription = bookings.read(Subscription.class, "lensward-hint-observation");
        assertThat(subscription.getCriteria()).isEqualTo("Observation?");
        assertThat(subscription.getChannel().getHeader())
                .extracting(each -> each.getValue())
                .isEqualTo(List.of("X-Lensward-Hint: " + SECRET));
        assertThat(subscription.getChannel().getPayload()).isNull();
    }

    @Test
    @Order(7)
    void a_stop_finishes_what_is_in_hand() throws Exception {
        between.misbehave(new Fault("last", GATHER, 1, new Sleeps(3_000), "planned"));
        bookings.add("last");
        post("/api/hints", SECRET, "");
        flow.awaitPlan(() -> between.count(GATHER, "last") == 1);
        assertThat(planned("last")).isFalse();
        flow.close();
        assertThat(planned("last")).isTrue();
        assertThat(between.count(PUBLISH, "last")).isEqualTo(1);
    }
}
