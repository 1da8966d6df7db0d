package org.lensward.board.access;

import ca.uhn.fhir.rest.server.exceptions.InvalidRequestException;
import ca.uhn.fhir.rest.server.exceptions.UnprocessableEntityException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.lensward.flow.RecordClient;
import org.lensward.record.audit.AuditEvents;
import org.lensward.record.audit.Deed;
import org.lensward.record.bank.RecordName;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Leaves an AuditEvent in the record for everything that people and programs ask to be changed, done or refused. One thread writes them
 * behind, in order, and tries again while the record is away; what cannot be kept any longer is said in the log, without names.
 */
public final class AuditTrail implements HandlerInterceptor, AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(AuditTrail.class);
    private static final int MOST_WAITING = 10_000;
    private static final int AT_ONCE = 100;
    private static final long PAUSE = 2_000;
    private static final long LAST_WAIT = 5_000;

    private final RecordClient client;
    private final Clock clock;
    private final BlockingQueue<Deed> waiting = new LinkedBlockingQueue<>(MOST_WAITING);
    private final Thread writer = new Thread(this::write, "audit");
    private volatile boolean open = true;

    AuditTrail(RecordClient client, Clock clock) {
        this.client = client;
        this.clock = clock;
        writer.setDaemon(true);
        writer.start();
    }

    @Override
    public void afterCompletion(
            HttpServletRequest request, HttpServletResponse response, Object handler, @Nullable Exception failure) {
        if (!"GET".equals(request.getMethod()) && !"HEAD".equals(request.getMethod())) {
            SignedIn.now().ifPresent(who -> keep(deed(request, who, failure == null ? response.getStatus() : 500)));
        }
    }

    private Deed deed(HttpServletRequest request, SignedIn who, int status) {
        return new Deed(
                clock.instant(),
                who.name(),
                who.roles().stream().map(Role::words).toList(),
                Optional.ofNullable(request.getRemoteAddr()),
                request.getMethod() + " " + request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE),
                about(request),
                Deed.Result.of(status));
    }

    /** The booking and the carton that the address names. */
    private static List<String> about(HttpServletRequest request) {
        Object named = request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE);
        List<String> about = new ArrayList<>();
        if (named instanceof Map<?, ?> values) {
            Map.of("booking", "ServiceRequest", "unit", "Device")
                    .forEach((name, type) -> Optional.ofNullable(values.get(name))
                            .flatMap(id -> RecordName.of(type, String.valueOf(id)))
                            .ifPresent(about::add));
        }
        return about;
    }

    private void keep(Deed deed) {
        if (!waiting.offer(deed)) {
            LOG.error("The audit trail is full; lost: {}", deed);
        }
    }

    private void write() {
        List<Deed> batch = new ArrayList<>();
        while (open || !waiting.isEmpty() || !batch.isEmpty()) {
            try {
                if (batch.isEmpty()) {
                    Optional.ofNullable(waiting.poll(PAUSE, TimeUnit.MILLISECONDS))
                            .ifPresent(batch::add);
                    waiting.drainTo(batch, AT_ONCE);
                }
                if (!batch.isEmpty() && !written(batch)) {
                    Thread.sleep(PAUSE);
                }
            } catch (InterruptedException stopped) {
                batch.addAll(waiting);
                batch.forEach(deed -> LOG.error("The record is away at the stop; not in the audit trail: {}", deed));
                return;
            }
        }
    }

    private boolean written(List<Deed> batch) {
        try {
            client.post(AuditEvents.transaction(batch));
            batch.clear();
            return true;
        } catch (InvalidRequestException | UnprocessableEntityException unacceptable) {
            batch.forEach(this::writeAlone);
            batch.clear();
            return true;
        } catch (RuntimeException away) {
            LOG.warn("{} audit events wait: {}", batch.size(), away.getClass().getSimpleName());
            return false;
        }
    }

    /** One that the record will never take holds up no other. */
    private void writeAlone(Deed deed) {
        try {
            client.post(AuditEvents.transaction(List.of(deed)));
        } catch (RuntimeException refused) {
            LOG.error(
                    "The record does not take an audit event ({}): {}",
                    refused.getClass().getSimpleName(),
                    deed);
        }
    }

    /** Writes what waits, for as long as one waits at a stop. */
    @Override
    public void close() throws InterruptedException {
        open = false;
        writer.join(LAST_WAIT);
        writer.interrupt();
    }
}
