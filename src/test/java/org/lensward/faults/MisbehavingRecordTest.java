package org.lensward.faults;

import static com.github.tomakehurst.wiremock.http.Fault.CONNECTION_RESET_BY_PEER;
import static com.github.tomakehurst.wiremock.http.Fault.EMPTY_RESPONSE;
import static com.github.tomakehurst.wiremock.http.Fault.MALFORMED_RESPONSE_CHUNK;
import static com.github.tomakehurst.wiremock.http.Fault.RANDOM_DATA_THEN_CLOSE;
import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.faults.Fault.ALWAYS;
import static org.lensward.faults.Fault.At.GATHER;
import static org.lensward.faults.Fault.At.PUBLISH;

import com.github.tomakehurst.wiremock.WireMockServer;
import com.github.tomakehurst.wiremock.client.WireMock;
import com.github.tomakehurst.wiremock.core.WireMockConfiguration;
import java.nio.file.Files;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.faults.Fault.At;
import org.lensward.faults.Fault.Babbles;
import org.lensward.faults.Fault.Bends;
import org.lensward.faults.Fault.Breaks;
import org.lensward.faults.Fault.Mishears;
import org.lensward.faults.Fault.Says;
import org.lensward.faults.Fault.Sleeps;
import org.lensward.faults.Fault.Swallows;
import org.lensward.flow.FaultyFlow;

/**
 * One row for each way in which a record misbehaves. All bookings are there together, several of them failing without end: what is
 * tried again is planned in the end, what is not is parked with its reason, nothing is lost, nothing doubled, and none stops another.
 * What the answers mean: RFC 9110 and FHIR R4's RESTful API.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class MisbehavingRecordTest {

    private static final String PLANNED = "planned";
    private static final Set<String> HARMLESS = Set.of("page-long", "page-bar", "twice");
    private static final String FHIR = "application/fhir+json";

    private static EmbeddedRecord record;
    private static MisbehavingRecord between;
    private static WireMockServer stranger;
    private static FaultyBookings bookings;
    private static FaultyFlow flow;

    private static Stream<Fault> faults() {
        String elsewhere = "http://127.0.0.1:" + stranger.port() + "/fhir";
        return Stream.of(
                new Fault("well", GATHER, 0, new Says(500), PLANNED),
                new Fault("slow", GATHER, 1, new Sleeps(12_000), PLANNED),
                new Fault("reset", GATHER, 2, new Breaks(CONNECTION_RESET_BY_PEER), PLANNED),
                new Fault("silence", GATHER, 2, new Breaks(EMPTY_RESPONSE), PLANNED),
                new Fault("cut-off", GATHER, 2, new Breaks(MALFORMED_RESPONSE_CHUNK), PLANNED),
                new Fault("noise", GATHER, 2, new Breaks(RANDOM_DATA_THEN_CLOSE), PLANNED),
                new Fault(
                        "half-json",
                        GATHER,
                        2,
                        new Bends((answer, url) -> answer.substring(0, answer.length() / 2)),
                        PLANNED),
                new Fault("web-page", GATHER, 2, new Babbles("text/html", "<html>Sign in</html>"), PLANNED),
                new Fault("no-bundle", GATHER, ALWAYS, new Babbles(FHIR, Fault.OUTCOME), "record-away"),
                new Fault("fewer", GATHER, 2, new Bends(MisbehavingRecordTest::fewer), PLANNED),
                new Fault("s401", GATHER, 2, new Says(401), PLANNED),
                new Fault("s403", GATHER, 2, new Says(403), PLANNED),
                new Fault("s403-always", GATHER, ALWAYS, new Says(403), "record-answered-403"),
                new Fault("s404", GATHER, 2, new Says(404), PLANNED),
                new Fault("s429", GATHER, 2, new Says(429), PLANNED),
                new Fault("s429-seconds", GATHER, 1, new Says(429, "Retry-After", "1"), PLANNED),
                new Fault("s429-words", GATHER, 1, new Says(429, "Retry-After", "a while"), PLANNED),
                new Fault("s500", GATHER, 2, new Says(500), PLANNED),
                new Fault("s500-always", GATHER, ALWAYS, new Says(500), "record-answered-500"),
                new Fault("s503", GATHER, 2, new Says(503), PLANNED),
                new Fault(
                        "s503-past", GATHER, 1, new Says(503, "Retry-After", "Wed, 21 Oct 2015 07:28:00 GMT"), PLANNED),
                new Fault("s503-always", GATHER, ALWAYS, new Says(503), "record-answered-503"),
                new Fault("redirect", GATHER, 2, new Says(307, "Location", elsewhere), PLANNED),
                new Fault(
                        "redirect-on", GATHER, ALWAYS, new Says(302, "Location", elsewhere), "record-points-elsewhere"),
                new Fault("page-gone", GATHER, 2, new Bends(next("/page-vanished")), PLANNED),
                new Fault("page-long", GATHER, 1, new Bends(next("/page-last?" + "x".repeat(4_096))), PLANNED),
                new Fault("page-bar", GATHER, 1, new Bends(next("/page-last?code=a|b")), PLANNED),
                new Fault("page-circle", GATHER, ALWAYS, new Bends(next("/page-again")), "page-repeated"),
                new Fault(
                        "page-away",
                        GATHER,
                        ALWAYS,
                        new Bends((answer, url) -> linked(answer, elsewhere)),
                        "record-points-elsewhere"),
                new Fault("twice", GATHER, 1, new Bends(MisbehavingRecordTest::doubled), PLANNED),
                new Fault("t400", PUBLISH, ALWAYS, new Says(400), "record-answered-400"),
                new Fault("t409", PUBLISH, 2, new Says(409), PLANNED),
                new Fault("t412", PUBLISH, 2, new Says(412), PLANNED),
                new Fault("t422", PUBLISH, ALWAYS, new Says(422), "record-answered-422"),
                new Fault("t503-date", PUBLISH, 1, new Says(503, "Retry-After", Fault.IN_TWO_SECONDS), PLANNED),
                new Fault("taken", PUBLISH, 1, new Swallows(), PLANNED),
                new Fault("batch", PUBLISH, 1, new Mishears(MisbehavingRecordTest::inPieces), PLANNED),
                new Fault(
                        "batch-always",
                        PUBLISH,
                        ALWAYS,
                        new Mishears(MisbehavingRecordTest::inPieces),
                        "part-refused"));
    }

    /** The answer to the last question is missing. */
    private static String fewer(String answer, String url) {
        return Json.edit(answer, bundle -> bundle.withArray("entry")
                .remove(bundle.get("entry").size() - 1));
    }

    /** Every entry of every search comes twice. */
    private static String doubled(String answer, String url) {
        return Json.edit(answer, bundle -> Json.searches(bundle).forEach(found -> found.withArray("entry")
                .addAll(found.withArray("entry").deepCopy())));
    }

    private static BinaryOperator<String> next(String page) {
        return (answer, url) -> linked(answer, url + page);
    }

    /** The first search that found anything has another page. */
    private static String linked(String answer, String address) {
        return Json.edit(answer, bundle -> Json.searches(bundle).limit(1).forEach(found -> found.putArray("link")
                .addObject()
                .put("relation", "next")
                .put("url", address)));
    }

    /** A server that takes a transaction piece by piece, and refuses one of them and what refers to it. */
    private static String inPieces(String transaction) {
        return Json.edit(transaction, bundle -> {
            bundle.put("type", "batch");
            Json.entry(bundle, "DeviceRequest").with("resource").with("subject").put("reference", "Patient/nobody");
        });
    }

    @BeforeAll
    static void everythingAtOnce() throws Exception {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        stranger = new WireMockServer(WireMockConfiguration.options().dynamicPort());
        stranger.start();
        between = new MisbehavingRecord(record.baseUrl());
        bookings = new FaultyBookings(record.baseUrl());
        for (Fault fault : faults().toList()) {
            between.misbehave(fault);
            bookings.add(fault.name());
        }
        flow = FaultyFlow.start(Map.of(
                "lensward.record.url", between.url(),
                "lensward.record.timeout", "8s",
                "lensward.retries.away", "3",
                "lensward.retries.refused", "3",
                "lensward.watch.interval", "1h",
                "spring.artemis.embedded.data-directory",
                        Files.createTempDirectory("lensward-queue").toString()));
        flow.awaitQuiet(Duration.ofSeconds(120));
    }

    @AfterAll
    static void stop() {
        flow.close();
        between.close();
        stranger.stop();
        record.close();
    }

    @ParameterizedTest
    @MethodSource("faults")
    @Order(1)
    void every_booking_meets_its_fate(Fault fault) {
        assertThat(flow.parked(fault.name()))
                .isEqualTo(fault.fate().equals(PLANNED) ? List.of() : List.of(fault.fate()));
        if (fault.fate().equals(PLANNED)) {
            isPlannedOnce(fault.name());
        }
        if (HARMLESS.contains(fault.name())) {
            assertThat(between.count(GATHER, fault.name())).as("asked once").isEqualTo(1);
        } else if (fault.times() < ALWAYS) {
            assertThat(between.count(GATHER, fault.name())).as("asked again").isGreaterThan(fault.times());
        }
    }

    /** The ordinary eye's plan, as its demo folder has it: four lenses, five formulas, a risk, a check. */
    private static void isPlannedOnce(String name) {
        assertThat(bookings.standing(Procedure.class, name)).hasSize(1);
        assertThat(bookings.standing(DeviceRequest.class, name)).hasSize(4);
        assertThat(bookings.standing(Observation.class, name)).hasSize(5);
        assertThat(bookings.standing(RiskAssessment.class, name)).hasSize(1);
        assertThat(bookings.standing(Task.class, name)).hasSize(1);
        assertThat(bookings.standing(DetectedIssue.class, name)).isEmpty();
    }

    @Test
    @Order(2)
    void what_cannot_change_is_not_tried_again_and_what_was_taken_is_not_told_again() {
        assertThat(between.count(At.PUBLISH, "taken")).isEqualTo(1);
        assertThat(between.count(At.PUBLISH, "t422")).isEqualTo(1);
        assertThat(between.count(At.PUBLISH, "t400")).isEqualTo(1);
    }

    @Test
    @Order(3)
    void what_may_change_is_tried_as_often_as_the_settings_say() {
        assertThat(between.count(GATHER, "s503-always")).isEqualTo(1 + 3);
        assertThat(between.count(GATHER, "s500-always")).isEqualTo(1 + 3);
    }

    @Test
    @Order(4)
    void nobody_else_is_asked_wherever_the_record_points() {
        stranger.verify(0, WireMock.anyRequestedFor(WireMock.anyUrl()));
    }

    @Test
    @Order(5)
    void replay_by_reason_takes_up_those_and_no_others_and_they_are_planned() {
        between.behave();
        int before = flow.parked().size();
        assertThat(flow.replay("record-answered-422")).isEqualTo(1);
        flow.awaitQuiet(Duration.ofSeconds(30));
        isPlannedOnce("t422");
        assertThat(flow.parked()).hasSize(before - 1);
        assertThat(flow.replayOne("s500-always")).isTrue();
        assertThat(flow.replayOne("s500-always")).isFalse();
        assertThat(flow.replay("record-answered")).isZero();
        flow.awaitQuiet(Duration.ofSeconds(30));
        isPlannedOnce("s500-always");
    }

    @Test
    @Order(6)
    void a_plan_taken_in_pieces_is_made_whole_when_it_is_taken_up() {
        assertThat(bookings.standing(Procedure.class, "batch-always")).hasSize(1);
        assertThat(bookings.standing(DeviceRequest.class, "batch-always")).hasSizeLessThan(4);
        assertThat(flow.replay("part-refused")).isEqualTo(1);
        flow.awaitQuiet(Duration.ofSeconds(30));
        isPlannedOnce("batch-always");
    }
}
