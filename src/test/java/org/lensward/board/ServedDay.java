package org.lensward.board;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.extension.ExtensionContext.Store.CloseableResource;
import org.lensward.board.cds.CallingClients;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.Adapter;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** The whole application at an address of its own, beside a real record with the planned theatre day. Started once for all tests. */
public final class ServedDay implements CloseableResource {

    public static final FhirContext FHIR = Fhir.r4();

    private static final Duration LONG = Duration.ofSeconds(120);

    private final HttpClient http = HttpClient.newHttpClient();
    private final EmbeddedRecord record;
    private final Adapter adapter;

    ServedDay() {
        this(Map.of());
    }

    /** A day of a test's own, with settings of its own. */
    public ServedDay(Map<String, Object> more) {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        new TheatreDay(FHIR).load(record.baseUrl());
        adapter = Adapter.serve(settings(more), BoardConfiguration.class, DemoTime.class);
        Instant end = Instant.now().plus(LONG);
        while (!plans().stream().allMatch(plan -> plan.plan().isPresent())) {
            pause();
            if (Instant.now().isAfter(end)) {
                throw new AssertionError("Not planned within " + LONG);
            }
        }
    }

    private Map<String, Object> settings(Map<String, Object> more) {
        try {
            Map<String, Object> settings = new HashMap<>(CallingClients.settings());
            settings.put("server.port", "0");
            settings.put("server.address", "127.0.0.1");
            settings.put("lensward.access.open", "true");
            settings.put(DemoTime.DAY, TheatreDay.DAY);
            settings.put("lensward.record.url", record.baseUrl());
            // One look plans the day; what a test puts into the record afterwards stays as it is.
            settings.put("lensward.watch.interval", "1h");
            settings.put("lensward.fhir.body-limit", "200KB");
            settings.put("lensward.cds.body-limit", "200KB");
            settings.put(
                    "spring.artemis.embedded.data-directory",
                    Files.createTempDirectory("lensward-queue").toString());
            settings.putAll(more);
            return settings;
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static void pause() {
        try {
            Thread.sleep(200);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError("Interrupted", interrupted);
        }
    }

    /** Every booking with its plan, as the record holds them. */
    public List<StoredPlan> plans() {
        return StoredPlan.all(new Shelf(adapter.record().gather(StoredPlan.QUESTIONS)))
                .toList();
    }

    /** A booking whose plan is in that state. */
    public StoredPlan any(String state) {
        return plans().stream()
                .filter(each ->
                        each.plan().map(StoredPlan::state).filter(state::equals).isPresent())
                .findFirst()
                .orElseThrow();
    }

    /** The tests' own way to the record. */
    public IGenericClient record() {
        return FHIR.newRestfulGenericClient(record.baseUrl());
    }

    public String recordUrl() {
        return record.baseUrl();
    }

    /** The application's address. */
    public String url() {
        return "http://localhost:" + adapter.port();
    }

    /** A request to the application. */
    public HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(url() + path));
    }

    public HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            return http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new AssertionError("Interrupted", interrupted);
        }
    }

    @Override
    public void close() {
        adapter.close();
        record.close();
    }
}
