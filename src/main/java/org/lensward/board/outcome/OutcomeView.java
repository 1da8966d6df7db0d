package org.lensward.board.outcome;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import org.lensward.eye.BiometryPolicy;
import org.lensward.flow.RecordClient;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.record.outcome.OutcomeReading;
import org.lensward.record.outcome.OutcomeStudy;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The last study of the record, in memory; one thread reads the record behind the readers' backs, never two at once. */
public final class OutcomeView implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(OutcomeView.class);

    private final FhirContext fhir;
    private final RecordClient client;
    private final BiometryPolicy biometry;
    private final OutcomePolicy policy;
    private final OutcomeSettings settings;
    private final Clock clock;
    private final AtomicBoolean busy = new AtomicBoolean();
    private final ExecutorService behind = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "outcomes");
        thread.setDaemon(true);
        return thread;
    });

    private volatile Optional<Seen> seen = Optional.empty();
    private volatile boolean failed;

    OutcomeView(Reader reader, OutcomeSettings settings, Clock clock) {
        this.fhir = reader.fhir();
        this.client = reader.client();
        this.biometry = reader.biometry();
        this.policy = reader.policy();
        this.settings = settings;
        this.clock = clock;
    }

    /** By what it reads. */
    record Reader(FhirContext fhir, RecordClient client, BiometryPolicy biometry, OutcomePolicy policy) {}

    /**
     * A study and its hour.
     *
     * @param study what the eyes say
     * @param at when the record was read
     */
    record Seen(OutcomeStudy study, Instant at) {}

    /** What was read last; a look at what is old, or at nothing, has the record read again. */
    Optional<Seen> now() {
        boolean old = seen.map(each -> each.at().plus(settings.stands()).isBefore(clock.instant()))
                .orElse(!failed);
        if (old) {
            read();
        }
        return seen;
    }

    /** Has the record read again. */
    void read() {
        if (busy.compareAndSet(false, true)) {
            behind.execute(this::study);
        }
    }

    boolean busy() {
        return busy.get();
    }

    /** Whether the last reading came to nothing. */
    boolean failed() {
        return failed;
    }

    private void study() {
        try (OutcomeReading reading = OutcomeReading.ofRecord(fhir, biometry, client::each)) {
            seen = Optional.of(new Seen(OutcomeStudy.of(reading, policy, reading.catalogue()), clock.instant()));
            failed = false;
        } catch (IOException | RuntimeException unread) {
            failed = true;
            LOG.warn("Outcomes could not be read: {}", unread.getClass().getSimpleName());
        } finally {
            busy.set(false);
        }
    }

    @Override
    public void close() {
        behind.shutdownNow();
    }
}
