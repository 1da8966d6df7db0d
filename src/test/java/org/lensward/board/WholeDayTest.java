package org.lensward.board;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.lensward.NodeClient;
import org.lensward.record.AcceptedWarnings;
import org.lensward.record.ProfileValidator;
import org.lensward.record.ReferenceTargets;

/**
 * A theatre day from plan to implant card, gone through by a FHIR client that is not ours, fhir-kit-client 2.0.3 (MIT, from npm), then by
 * store keeper and surgeon over HTTP; in the end one of each sort of what was written is put before HL7's validator.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class WholeDayTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static ServedDay day;
    private static Map<String, List<JsonNode>> said;

    @BeforeAll
    static void go_through_the_day() throws Exception {
        NodeClient client = NodeClient.in("fhir", "fhir-kit-client");
        day = new ServedDay(Map.of("lensward.watch.interval", "300ms", "lensward.cds.open", "true"));
        said = client.run(List.of(), "day.mjs", day.recordUrl(), day.url()).stream()
                .collect(Collectors.groupingBy(line -> line.path("step").asText()));
    }

    @AfterAll
    static void close() {
        if (day != null) {
            day.close();
        }
    }

    private static List<JsonNode> all(String step) {
        return Objects.requireNonNull(said.get(step), step);
    }

    private static JsonNode step(String step) {
        return all(step).get(0);
    }

    private static List<String> texts(JsonNode list) {
        List<String> texts = new ArrayList<>();
        list.forEach(each -> texts.add(each.asText()));
        return texts;
    }

    @Test
    @Order(1)
    void the_client_reads_both_servers_and_finds_a_booking_with_its_plan_lenses_and_check() {
        assertThat(step("metadata").path("record").asText()).isEqualTo("4.0.1");
        assertThat(texts(step("metadata").path("operations"))).containsExactly("plan", "verify-lens");
        JsonNode plan = step("plan");
        assertThat(plan.path("bookings").asInt()).isEqualTo(12);
        assertThat(plan.path("status").asText()).isEqualTo("preparation");
        assertThat(plan.path("state").asText()).isEqualTo("ready");
        assertThat(plan.path("basedOn").asText()).isEqualTo("ServiceRequest/booking-01");
        assertThat(texts(plan.path("roles"))).containsExactly("anterior-chamber", "primary", "spare", "sulcus");
        assertThat(plan.path("check").asText()).isEqualTo("awaiting-confirmation");
        assertThat(plan.path("focus").asText()).isEqualTo("DeviceRequest/plan-booking-01-primary");
        assertThat(step("plan again").path("entries").asInt())
                .as("the plan stands: nothing to write")
                .isZero();
    }

    @Test
    @Order(2)
    void verify_lens_refuses_before_the_surgeons_word_and_passes_each_checkpoint_after_it() {
        assertThat(step("too early").path("result").asText()).isEqualTo("refused");
        assertThat(texts(step("too early").path("codes"))).containsExactly("check-not-confirmed");
        Map<String, String> reached = Map.of(
                "pick", "picked",
                "sign-in", "signed-in",
                "time-out", "timed-out",
                "before-opening", "cleared-to-open",
                "sign-out", "completed");
        reached.forEach((checkpoint, state) -> {
            assertThat(step(checkpoint).path("result").asText()).as(checkpoint).isEqualTo("passed");
            assertThat(step(checkpoint).path("state").asText()).isEqualTo(state);
            assertThat(step(checkpoint).path("written").asBoolean()).isTrue();
        });
        assertThat(all("pick").get(1).path("written").asBoolean())
                .as("the same step again")
                .isFalse();
        assertThat(step("pick").path("carton").asText()).isEqualTo("picked");
        assertThat(step("sign-out").path("carton").asText()).isEqualTo("implanted");
        assertThat(step("sign-out").path("serial").asText())
                .isEqualTo(step("implanted").path("serial").asText());
        assertThat(step("implanted").path("plan").asText()).isEqualTo("completed");
        assertThat(step("refused").path("status").asInt()).isEqualTo(400);
        assertThat(step("refused").path("type").asText()).isEqualTo("OperationOutcome");
    }

    @Test
    @Order(3)
    void a_changed_measurement_replaces_the_plan_and_voids_the_check() {
        assertThat(step("changed").path("replaced").asBoolean()).isTrue();
        assertThat(step("changed").path("voided").asText()).isEqualTo("cancelled");
        assertThat(step("changed").path("state").asText()).isEqualTo("void");
        assertThat(step("changed").path("next").asText()).isEqualTo("awaiting-confirmation");
    }

    @Test
    @Order(4)
    void a_hook_is_answered_and_takes_feedback() {
        assertThat(step("cards").path("status").asInt()).isEqualTo(200);
        assertThat(texts(step("cards").path("indicators"))).contains("critical");
        assertThat(step("feedback").path("status").asInt()).isEqualTo(200);
    }

    @Test
    @Order(5)
    void store_keeper_and_surgeon_do_the_rest() throws Exception {
        String arrival = "{\"scans\": [\"]d2010952123400001317280131" + "10DAY1" + "\\u001d" + "21880001\"],"
                + " \"model\": \"DeviceDefinition/harbour-60\", \"power\": \"24 D\","
                + " \"location\": \"Location/lens-store\", \"owner\": \"Organization/harbour-eye-unit\","
                + " \"consigned\": false, \"by\": \"Mr Keel\"}";
        String unit = "/api/bank/units/"
                + post("/api/bank/units", arrival).path("unit").asText().replace("Device/", "");
        String deed = "{\"by\": \"Mr Keel\", \"booking\": \"booking-12\", \"day\": \"2026-12-10\","
                + " \"reason\": \"seal doubtful\"}";
        for (String movement :
                List.of("reserve", "return", "quarantine", "release", "reserve", "pick", "return", "waste")) {
            post(unit + "/" + movement, deed);
        }
        post("/api/stock/orders?from=2026-12-10&to=2026-12-10", "");
        post("/api/plans/booking-11/confirmation", "{\"surgeon\": \"Ms Vale\"}");
        post("/api/plans/booking-11/refusal", "{\"surgeon\": \"Ms Vale\", \"reason\": \"measure again\"}");
        post("/api/plans/booking-11/new-choice", "{\"surgeon\": \"Ms Vale\", \"reason\": \"measured again\"}");
        post(
                "/api/plans/booking-04/change",
                "{\"surgeon\": \"Ms Vale\", \"reason\": \"reads a lot\", \"target\": \"-1.50 D\"}");
    }

    private static JsonNode post(String path, String body) throws Exception {
        HttpResponse<String> answer =
                day.send(day.to(path).header("Content-Type", "application/json").POST(BodyPublishers.ofString(body)));
        assertThat(answer.statusCode()).as(path + " " + answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    /** Every warning is one of a kind that {@code accepted-warnings.md} numbers, with its reason. */
    @Test
    @Order(6)
    void one_of_each_sort_that_was_written_is_valid_in_each_state_it_went_through() {
        Map<String, Resource> written = new TreeMap<>();
        everyVersion().forEach(each -> written.putIfAbsent(sort(each), each));
        List<String> faults = new ArrayList<>();
        written.forEach((sort, each) -> {
            ProfileValidator.faults(each).forEach(fault -> faults.add(sort + ": " + fault));
            if (each.getMeta().hasProfile()) {
                ReferenceTargets.misdirected(each).forEach(fault -> faults.add(sort + ": " + fault));
            }
        });
        assertThat(faults).isEmpty();
        List<String> warnings = written.values().stream()
                .filter(each ->
                        List.of("plan-provenance", "predicted-refraction").contains(kind(each)))
                .flatMap(each -> ProfileValidator.warnings(each).stream())
                .toList();
        assertThat(AcceptedWarnings.ofTheDay()).isNotEmpty().allMatch(accepted -> warnings.stream()
                .anyMatch(warning -> warning.contains(accepted)));
        assertThat(written.values().stream().map(WholeDayTest::kind).distinct())
                .contains(
                        "eye-plan",
                        "implant-record",
                        "lens-request",
                        "predicted-refraction",
                        "capsule-rupture-risk",
                        "finding",
                        "lens-check",
                        "plan-provenance",
                        "check-provenance",
                        "unit-movement",
                        "lens-unit",
                        "lens-use",
                        "lens-supply",
                        "AuditEvent");
        assertThat(written.keySet())
                .as("the states of a lens check")
                .filteredOn(sort -> sort.startsWith("lens-check"))
                .hasSizeGreaterThanOrEqualTo(9);
    }

    /** What tells one sort from another: profile, status, and the codes that say what it is and where it stands. */
    private static String sort(Resource resource) {
        JsonNode json;
        try {
            json = JSON.readTree(ServedDay.FHIR.newJsonParser().encodeResourceToString(resource));
        } catch (JsonProcessingException impossible) {
            throw new AssertionError(impossible);
        }
        List<String> sort = new ArrayList<>(List.of(kind(resource)));
        for (String pointer : List.of(
                "/status",
                "/intent",
                "/businessStatus/coding/0/code",
                "/code/coding/0/code",
                "/method/coding/0/code",
                "/activity/coding/0/code")) {
            sort.add(json.at(pointer).asText());
        }
        sort.addAll(json.path("extension").findValuesAsText("valueCode"));
        return String.join(" ", sort);
    }

    private static String kind(Resource resource) {
        return resource.getMeta().hasProfile()
                ? resource.getMeta().getProfile().get(0).getValue().replaceAll(".*/", "")
                : resource.fhirType();
    }

    private static List<Resource> everyVersion() {
        List<Resource> written = new ArrayList<>();
        Bundle page = day.record()
                .history()
                .onServer()
                .returnBundle(Bundle.class)
                .count(500)
                .execute();
        while (true) {
            page.getEntry().stream()
                    .map(BundleEntryComponent::getResource)
                    .filter(each -> each != null
                            && (each.getMeta().hasProfile() || each.fhirType().equals("AuditEvent")))
                    .forEach(written::add);
            if (page.getLink(Bundle.LINK_NEXT) == null) {
                return written;
            }
            page = day.record().loadPage().next(page).execute();
        }
    }
}
