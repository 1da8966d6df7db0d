package org.lensward.board.api;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.rest.client.api.IGenericClient;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.board.BoardConfiguration;
import org.lensward.board.DemoTime;
import org.lensward.board.access.TestKey;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.Adapter;
import org.lensward.record.Fhir;

/** Surgeon, nurse and store keeper through HTTP, on a real record with the demo's day and bank, beside the running adapter. */
class ApiTest {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    /** GS1 separator. */
    private static final char GS = 0x1D;

    private static EmbeddedRecord record;
    private static Adapter adapter;
    private static IGenericClient client;
    private static String token;

    @BeforeAll
    static void start() throws Exception {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        new TheatreDay(Fhir.r4()).load(record.baseUrl());
        client = Fhir.r4().newRestfulGenericClient(record.baseUrl());
        TestKey key = new TestKey();
        token = key.bearer();
        Map<String, Object> settings = new HashMap<>(key.settings());
        settings.put("lensward.record.url", record.baseUrl());
        settings.put("lensward.watch.interval", "300ms");
        settings.put("server.port", "0");
        settings.put(DemoTime.DAY, TheatreDay.DAY);
        settings.put(
                "spring.artemis.embedded.data-directory",
                Files.createTempDirectory("queue").toString());
        adapter = Adapter.serve(settings, BoardConfiguration.class, DemoTime.class);
        for (String booking : List.of("booking-01", "booking-03", "booking-04", "booking-05", "booking-11")) {
            await(booking, "awaiting-confirmation");
        }
    }

    @AfterAll
    static void stop() {
        adapter.close();
        record.close();
    }

    private record Answer(int status, String type, JsonNode body) {}

    private static Answer call(String method, String path, String body) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + adapter.port() + path))
                .header("Content-Type", "application/json")
                .header("Authorization", token)
                .method(method, body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body))
                .build();
        HttpResponse<String> answer = HTTP.send(request, BodyHandlers.ofString());
        assertThat(answer.body()).doesNotContain("Exception", "at org.");
        return new Answer(
                answer.statusCode(),
                answer.headers().firstValue("Content-Type").orElse(""),
                JSON.readTree(answer.body()));
    }

    private static Answer get(String path) throws Exception {
        return call("GET", path, "");
    }

    private static Answer post(String path, String body) throws Exception {
        return call("POST", path, body);
    }

    /** Until the booking's check stands so. */
    private static void await(String booking, String state) throws Exception {
        Instant end = Instant.now().plus(Duration.ofSeconds(90));
        while (Instant.now().isBefore(end)) {
            Answer plan = get("/api/plans/" + booking);
            if (plan.body().path("check").asText("").equals(state)) {
                return;
            }
            Thread.sleep(200);
        }
        throw new AssertionError(booking + " did not come to " + state + ": " + get("/api/plans/" + booking));
    }

    private static Task check(String booking) {
        return client
                .search()
                .byUrl("Task?identifier=https://lensward.org/fhir/sid/eye-plan|" + booking)
                .returnBundle(Bundle.class)
                .execute()
                .getEntry()
                .stream()
                .map(entry -> (Task) entry.getResource())
                .filter(task -> task.getStatus() != Task.TaskStatus.CANCELLED)
                .findFirst()
                .orElseThrow();
    }

    /** What a careful team reads off patient, sheet and box; the carton is the one the stock check names. */
    private static ObjectNode careful(String booking, String eye, String state) throws Exception {
        Patient patient = (Patient) client.search()
                .byUrl("Patient?_has:ServiceRequest:subject:_id=" + booking)
                .returnBundle(Bundle.class)
                .execute()
                .getEntryFirstRep()
                .getResource();
        ObjectNode presented = JSON.createObjectNode();
        ObjectNode identity = presented.putObject("patient");
        patient.getIdentifier().forEach(each -> identity.withArray("numbers")
                .addObject()
                .put("system", each.getSystem())
                .put("value", each.getValue()));
        identity.put("birth-date", patient.getBirthDateElement().getValueAsString());
        ObjectNode eyes = presented.putObject("eyes");
        Stream.of("booking", "sheet", "biometry", "mark").forEach(place -> eyes.put(place, eye));
        presented.put(
                "plan", get("/api/plans/" + booking).body().path("fingerprint").asText());
        ObjectNode carton = presented.putObject("carton").put("state", state);
        JsonNode needs = get("/api/stock?from=2026-12-10&to=2026-12-10").body().path("needs");
        for (JsonNode need : needs) {
            if (need.path("booking").asText().endsWith(booking) && need.hasNonNull("unit")) {
                ObjectNode lens = JSON.createObjectNode();
                Device unit = unit(need.path("unit").asText());
                lens.put("model", unit.getDefinition().getReference());
                lens.put(
                        "power",
                        unit.getPropertyFirstRep().getValueQuantityFirstRep().getValue() + " D");
                if (need.path("role").asText().equals("primary")) {
                    carton.putObject("read").put("reader", "Nurse Wold").set("lens", lens);
                } else {
                    ObjectNode backUp = JSON.createObjectNode()
                            .put("role", need.path("role").asText());
                    backUp.set("lens", lens);
                    presented.withArray("back-ups").add(backUp);
                }
            }
        }
        presented.putArray("allergies");
        presented.putObject("people").put("reader", "Nurse Lark").put("second", "Nurse Wold");
        presented.put("at", "2026-12-10T08:20:00Z");
        return presented;
    }

    private static Device unit(String name) {
        return client.read().resource(Device.class).withUrl(name).execute();
    }

    private static String primary(String booking) throws Exception {
        return StreamSupport.stream(
                        get("/api/stock?from=2026-12-10&to=2026-12-10")
                                .body()
                                .path("needs")
                                .spliterator(),
                        false)
                .filter(need -> need.path("booking").asText().endsWith(booking))
                .filter(need -> need.path("role").asText().equals("primary"))
                .map(need -> need.path("unit").asText())
                .findFirst()
                .orElseThrow();
    }

    /** As a scanner sends it: GS1 element string with symbology prefix. */
    private static String scan(Device unit) {
        String expiry = unit.getExpirationDateElement()
                .getValueAsString()
                .substring(2, 10)
                .replace("-", "");
        return "]d201" + unit.getUdiCarrierFirstRep().getDeviceIdentifier() + "17" + expiry + "10" + unit.getLotNumber()
                + GS + "21" + unit.getSerialNumber();
    }

    private static String step(String scan, ObjectNode presented) {
        ObjectNode step = JSON.createObjectNode();
        step.withArray("scans").add(scan);
        step.set("presented", presented);
        step.putObject("implanted").put("surgeon", "Ms Vale").put("hospital", "Organization/harbour-eye-unit");
        return step.toString();
    }

    @Test
    void one_eye_goes_the_whole_way_from_plan_to_implant_card() throws Exception {
        String carton = primary("booking-01");
        String scan = scan(unit(carton));
        ObjectNode told = careful("booking-01", "right", "intact");
        assertThat(post("/api/checks/booking-01/pick", step(scan, told)).status())
                .as("nothing is picked before the surgeon has confirmed")
                .isEqualTo(409);
        Answer confirmed = post("/api/plans/booking-01/confirmation", "{\"surgeon\": \"Ms Vale\"}");
        assertThat(confirmed.status()).isEqualTo(200);
        assertThat(confirmed.body().path("check").asText()).isEqualTo("confirmed");

        Answer picked = post("/api/checks/booking-01/pick", step(scan, told));
        assertThat(picked.body().path("carton").path("state").asText()).isEqualTo("picked");
        assertThat(picked.body().path("carton").path("heldFor").asText()).isEqualTo("ServiceRequest/booking-01");
        assertThat(post("/api/checks/booking-01/pick", step(scan, told))
                        .body()
                        .path("changed")
                        .asBoolean())
                .as("the same step again changes nothing")
                .isFalse();
        assertThat(post("/api/checks/booking-01/before-opening", step(scan, told))
                        .status())
                .as("a step out of order")
                .isEqualTo(409);
        // A caller's time could talk past an expiry or the day; the server's counts.
        told.put("at", "2031-01-01T08:20:00Z");
        for (String checkpoint : List.of("sign-in", "time-out", "before-opening")) {
            assertThat(post("/api/checks/booking-01/" + checkpoint, step(scan, told))
                            .status())
                    .as(checkpoint)
                    .isEqualTo(200);
        }
        Answer out = post("/api/checks/booking-01/sign-out", step(scan, careful("booking-01", "right", "opened")));
        assertThat(out.status()).isEqualTo(200);
        assertThat(out.body().path("check").asText()).isEqualTo("completed");
        assertThat(out.body().path("carton").path("state").asText()).isEqualTo("implanted");
        assertThat(out.body().path("card").path("udi").asText())
                .as("as GS1 prints it, whatever the scanner sent")
                .startsWith("(01)" + unit(carton).getUdiCarrierFirstRep().getDeviceIdentifier());
        assertThat(out.body().path("card").path("serial").asText())
                .isEqualTo(unit(carton).getSerialNumber());
    }

    @Test
    void the_wrong_carton_stops_the_check_and_only_the_surgeon_opens_another() throws Exception {
        post("/api/plans/booking-05/confirmation", "{\"surgeon\": \"Ms Vale\"}");
        String wrong = scan(unit(primary("booking-11")));
        ObjectNode told = careful("booking-05", "right", "intact");
        told.putArray("allergies").add("Penicillin (anaphylaxis)");
        Answer stopped = post("/api/checks/booking-05/pick", step(wrong, told));
        assertThat(stopped.status()).isEqualTo(409);
        assertThat(stopped.type()).startsWith("application/problem+json");
        assertThat(stopped.body().path("type").asText()).endsWith("lens-check-stopped");
        assertThat(stopped.body().path("findings").findValuesAsText("code")).contains("check-model-differs");
        assertThat(stopped.body().path("findings").findValuesAsText("remedy")).doesNotContain("");

        String right = scan(unit(primary("booking-05")));
        assertThat(post("/api/checks/booking-05/pick", step(right, told)).status())
                .as("stopped is stopped")
                .isEqualTo(409);
        assertThat(post("/api/plans/booking-05/new-choice", "{\"surgeon\": \"Ms Vale\"}")
                        .status())
                .as("without a reason")
                .isEqualTo(422);
        assertThat(post(
                                "/api/plans/booking-05/new-choice",
                                "{\"surgeon\": \"Ms Vale\", \"reason\": \"wrong carton put away\"}")
                        .status())
                .isEqualTo(200);
        assertThat(post("/api/checks/booking-05/pick", step(right, told)).status())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @CsvSource({
        "'', label-empty",
        "(01)0952123400001, label-truncated",
        "à&à)('é&é\"', label-garbled",
        "+A123BJC5D6E71H, label-check-wrong"
    })
    void a_scan_that_cannot_be_read_leaves_the_check_as_it_is(String scan, String code) throws Exception {
        String before = check("booking-11").getMeta().getVersionId();
        Answer refused = post("/api/checks/booking-11/pick", step(scan, careful("booking-11", "right", "intact")));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body().path("findings").findValuesAsText("code"))
                .containsAnyOf(code, "label-not-recognised");
        assertThat(check("booking-11").getMeta().getVersionId()).isEqualTo(before);
    }

    @Test
    void another_target_is_planned_again_and_voids_the_check() throws Exception {
        String before = get("/api/plans/booking-04").body().path("fingerprint").asText();
        Answer changed = post(
                "/api/plans/booking-04/change",
                "{\"surgeon\": \"Ms Vale\", \"reason\": \"reads a lot\", \"target\": \"-1.50 D\"}");
        assertThat(changed.status()).isEqualTo(200);
        Instant end = Instant.now().plus(Duration.ofSeconds(60));
        String now = before;
        while (now.equals(before) && Instant.now().isBefore(end)) {
            Thread.sleep(200);
            now = get("/api/plans/booking-04").body().path("fingerprint").asText();
        }
        assertThat(now).isNotEqualTo(before);
        await("booking-04", "awaiting-confirmation");
        assertThat(post(
                                "/api/plans/booking-04/change",
                                "{\"surgeon\": \"x\", \"reason\": \"y\", \"target\": \"-1.50\"}")
                        .body()
                        .path("element")
                        .asText())
                .isEqualTo("target");
    }

    @Test
    void a_model_that_is_not_in_the_catalogue_is_refused_at_the_change() throws Exception {
        Answer refused = post(
                "/api/plans/booking-11/change",
                "{\"surgeon\": \"Ms Vale\", \"reason\": \"tried\", \"lensModel\": \"DeviceDefinition/nobody-makes-it\"}");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body().path("findings").findValuesAsText("code")).containsExactly("lens-model-unknown");
    }

    @Test
    void another_lens_than_the_planned_one_is_recorded_with_who_decided_and_why() throws Exception {
        JsonNode sulcus = StreamSupport.stream(
                        get("/api/stock?from=2026-12-10&to=2026-12-10")
                                .body()
                                .path("needs")
                                .spliterator(),
                        false)
                .filter(need -> need.path("booking").asText().endsWith("booking-03"))
                .filter(need -> need.path("role").asText().equals("sulcus"))
                .findFirst()
                .orElseThrow();
        ObjectNode deviation = JSON.createObjectNode();
        deviation.withArray("scans").add(scan(unit(sulcus.path("unit").asText())));
        deviation.put("surgeon", "Ms Vale").put("hospital", "Organization/harbour-eye-unit");
        deviation.put("clinician", "Ms Vale").put("by", "Nurse Lark").put("reason", "");
        assertThat(post("/api/checks/booking-03/implanted-instead", deviation.toString())
                        .status())
                .as("without a reason")
                .isEqualTo(400);
        deviation.put("reason", "the capsule tore");
        Answer card = post("/api/checks/booking-03/implanted-instead", deviation.toString());
        assertThat(card.status()).isEqualTo(200);
        Procedure operation = client.read()
                .resource(Procedure.class)
                .withId("plan-booking-03")
                .execute();
        assertThat(operation.getStatus()).isEqualTo(Procedure.ProcedureStatus.COMPLETED);
        assertThat(((Annotation) operation
                                .getExtensionByUrl("https://lensward.org/fhir/StructureDefinition/plan-deviation")
                                .getValue())
                        .getText())
                .isEqualTo("the capsule tore");
    }

    @Test
    void a_carton_is_taken_in_reserved_once_and_recalled() throws Exception {
        String arrival = "{\"scans\": [\"]d2010952123400001317280131" + "10RECALL1" + "\\u001d" + "21990001\"],"
                + " \"model\": \"DeviceDefinition/harbour-60\", \"power\": \"24 D\","
                + " \"location\": \"Location/lens-store\", \"owner\": \"Organization/harbour-eye-unit\","
                + " \"consigned\": false, \"by\": \"Mr Keel\"}";
        Answer taken = post("/api/bank/units", arrival);
        assertThat(taken.status()).as(taken.toString()).isEqualTo(200);
        assertThat(post("/api/bank/units", arrival).status())
                .as("taken in twice")
                .isEqualTo(409);
        String unit = taken.body().path("unit").asText();
        String id = unit.replace("Device/", "");
        assertThat(get("/api/bank/units/" + id)
                        .body()
                        .path("power")
                        .path("value")
                        .asDouble())
                .isEqualTo(24);
        String deed = "{\"by\": \"Mr Keel\", \"booking\": \"booking-12\", \"day\": \"2026-12-10\"}";
        assertThat(post("/api/bank/units/" + id + "/reserve", deed)
                        .body()
                        .path("state")
                        .asText())
                .isEqualTo("reserved");
        assertThat(post("/api/bank/units/" + id + "/reserve", deed.replace("booking-12", "booking-02"))
                        .status())
                .as("promised to another")
                .isEqualTo(409);
        assertThat(post("/api/bank/units/" + id + "/waste", deed)
                        .body()
                        .path("element")
                        .asText())
                .isEqualTo("reason");
        assertThat(post("/api/bank/units/" + id + "/lend", deed).status()).isEqualTo(404);
        String seen = "{\"by\": \"Mr Keel\", \"to\": \"north-store\", \"version\": \"1\"}";
        assertThat(post("/api/bank/units/" + id + "/carry", seen).status())
                .as("decided on an older look")
                .isEqualTo(409);
        assertThat(post("/api/bank/units/" + id + "/carry", seen.replace("\"1\"", "\"2\""))
                        .body()
                        .path("location")
                        .asText())
                .isEqualTo("Location/north-store");
        assertThat(get("/api/bank/units/" + id + "/history").body().findValuesAsText("done"))
                .containsExactly("Carried to another store", "Reserved", "Taken in");
        Answer recall = get("/api/bank/recalls?lot=RECALL1");
        assertThat(recall.body().path("units").findValuesAsText("unit")).containsExactly(unit);
        assertThat(recall.body().path("units").findValuesAsText("heldFor"))
                .containsExactly("ServiceRequest/booking-12");
        Answer quarantined = post(
                "/api/bank/recalls/quarantine?lot=RECALL1",
                "{\"by\": \"Mr Keel\", \"reason\": \"recalled by its maker\"}");
        assertThat(quarantined.body().path("units").findValuesAsText("state")).containsExactly("quarantined");
        assertThat(get("/api/bank/units?state=quarantined").body().findValuesAsText("unit"))
                .contains(unit);
    }

    @Test
    void what_is_short_is_explained_and_ordered_once() throws Exception {
        JsonNode sheet = get("/api/stock?from=2026-12-10&to=2026-12-10").body();
        assertThat(sheet.path("findings").findValuesAsText("code")).contains("lens-not-in-stock");
        assertThat(sheet.path("orders")).isNotEmpty();
        post("/api/stock/orders?from=2026-12-10&to=2026-12-10", "");
        int ordered = supplies();
        post("/api/stock/orders?from=2026-12-10&to=2026-12-10", "");
        assertThat(supplies()).isEqualTo(ordered).isPositive();
        assertThat(get("/api/stock?from=2026-12-11&to=2026-12-10").status()).isEqualTo(400);
    }

    private static int supplies() {
        return client.search()
                .byUrl("SupplyRequest?status=active")
                .returnBundle(Bundle.class)
                .execute()
                .getEntry()
                .size();
    }

    @Test
    void the_day_names_bookings_and_what_to_bring() throws Exception {
        JsonNode day = get("/api/days/2026-12-10").body();
        assertThat(day).hasSize(2);
        assertThat(day.toString().toLowerCase(Locale.ROOT))
                .contains("servicerequest/booking-01", "antiseptic")
                .doesNotContain("dunnock", "1941");
    }

    @ParameterizedTest
    @CsvSource({
        "GET, /api/plans/nobody, 404",
        "GET, /api/checks/nobody, 404",
        "GET, /api/bank/units/nobody, 404",
        "POST, /api/plans/nobody/confirmation, 404",
        "POST, /api/checks/booking-11/somewhere, 404",
        "GET, /api/nothing, 404"
    })
    void what_is_not_there_is_a_problem_that_says_so(String method, String path, int status) throws Exception {
        String body = path.contains("checks") ? "{\"scans\": [], \"presented\": {}}" : "{\"surgeon\": \"s\"}";
        Answer answer = call(method, path, method.equals("POST") ? body : "");
        assertThat(answer.status()).isEqualTo(status);
        assertThat(answer.type()).startsWith("application/problem+json");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/api/plans/booking-11/confirmation | {} | surgeon",
                "/api/plans/booking-11/change | {\"surgeon\": \"s\", \"reason\": \"r\", \"taget\": \"-1 D\"} | taget",
                "/api/checks/booking-11/pick | {\"scans\": []} | presented",
                "/api/labels | {} | scans",
                "/api/bank/units | {} | scans"
            })
    void a_field_that_is_missing_or_unknown_is_named(String path, String body, String field) throws Exception {
        Answer answer = post(path, body);
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.body().path("detail").asText()).contains(field);
    }

    @Test
    void an_id_that_is_more_than_an_id_is_refused() throws Exception {
        assertThat(get("/api/plans/booking-01%3F_include=x").status()).isEqualTo(400);
    }

    /** A label cut short, and a carton that nobody took in: neither is judged, neither is implanted unrecorded. */
    @ParameterizedTest
    @CsvSource({
        "(01)09521234000013, 422, check-scan-unreadable",
        "(01)09521234000013(17)280131(10)NOBODY(21)1, 404, unit-not-in-bank"
    })
    void half_a_label_or_an_unknown_carton_leaves_the_check_as_it_is(String scan, int status, String code)
            throws Exception {
        String before = check("booking-11").getMeta().getVersionId();
        Answer refused = post("/api/checks/booking-11/pick", step(scan, careful("booking-11", "right", "intact")));
        assertThat(refused.status()).isEqualTo(status);
        assertThat(refused.body().path("findings").findValuesAsText("code")).containsExactly(code);
        assertThat(check("booking-11").getMeta().getVersionId()).isEqualTo(before);
    }

    @Test
    void a_body_that_is_no_json_is_refused() throws Exception {
        Answer answer = post("/api/plans/booking-11/confirmation", "not json");
        assertThat(answer.status()).isEqualTo(400);
        assertThat(answer.type()).startsWith("application/problem+json");
    }

    @Test
    void every_call_is_described() throws Exception {
        JsonNode paths = get("/api/openapi").body().path("paths");
        assertThat(paths.fieldNames())
                .toIterable()
                .contains(
                        "/api/days/{day}",
                        "/api/plans/{booking}",
                        "/api/plans/{booking}/confirmation",
                        "/api/plans/{booking}/refusal",
                        "/api/plans/{booking}/new-choice",
                        "/api/plans/{booking}/change",
                        "/api/checks/{booking}",
                        "/api/checks/{booking}/{checkpoint}",
                        "/api/checks/{booking}/implanted-instead",
                        "/api/labels",
                        "/api/bank/units",
                        "/api/bank/units/{unit}",
                        "/api/bank/units/{unit}/history",
                        "/api/flow",
                        "/api/flow/replay",
                        "/api/flow/dry-run",
                        "/api/bank/units/{unit}/{movement}",
                        "/api/bank/recalls",
                        "/api/bank/recalls/quarantine",
                        "/api/stock",
                        "/api/stock/orders");
    }

    @Test
    void a_label_is_read_without_writing_anything() throws IOException, Exception {
        Answer label = post("/api/labels", "{\"scans\": [\"(01)09521234000013(17)270630(10)HB62706(21)70114\"]}");
        assertThat(label.body().path("expiry").asText()).isEqualTo("2027-06-30");
        assertThat(label.body().has("power")).isFalse();
    }
}
