package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** A real record holding the theatre day, with or without a real adapter beside it, for tests of the whole. */
final class RunningDay implements AutoCloseable {

    private static final FhirContext FHIR = Fhir.r4();

    private final EmbeddedRecord record;
    private final Path queue;
    private final IGenericClient client;

    RunningDay() throws IOException {
        this(EmbeddedRecordSettings.inMemory(0));
    }

    RunningDay(EmbeddedRecordSettings kept) throws IOException {
        record = EmbeddedRecord.start(kept);
        queue = Files.createTempDirectory("lensward-queue");
        new TheatreDay(FHIR).load(record.baseUrl());
        client = FHIR.newRestfulGenericClient(record.baseUrl());
    }

    String url() {
        return record.baseUrl();
    }

    Path queue() {
        return queue;
    }

    /** The tests' own way to the record, independent of the adapter's. */
    IGenericClient client() {
        return client;
    }

    Adapter adapter() {
        return Adapter.start(settings());
    }

    Map<String, Object> settings() {
        return Map.of(
                "lensward.record.url", record.baseUrl(),
                "lensward.watch.interval", "300ms",
                "spring.artemis.embedded.data-directory", queue.toString());
    }

    /** Every booking with the plan that stands for it. */
    List<StoredPlan> plans() {
        RecordClient reader = new RecordClient(
                Fhir.r4(), new AdapterSettings.RecordServer(URI.create(record.baseUrl()), Duration.ofSeconds(30)));
        Bundle gathered = reader.gather(StoredPlan.QUESTIONS);
        return StoredPlan.all(new Shelf(gathered)).toList();
    }

    boolean allPlanned() {
        List<StoredPlan> plans = plans();
        return !plans.isEmpty() && plans.stream().allMatch(plan -> plan.plan().isPresent());
    }

    /** Waits until something holds; fails with its name if it does not in time. */
    static void await(String what, Duration longest, BooleanSupplier holds) {
        Instant end = Instant.now().plus(longest);
        while (!holds.getAsBoolean()) {
            if (Instant.now().isAfter(end)) {
                throw new AssertionError("Not within " + longest + ": " + what);
            }
            try {
                Thread.sleep(200);
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                throw new AssertionError("Interrupted while waiting: " + what, interrupted);
            }
        }
    }

    @Override
    public void close() {
        record.close();
    }
}
