package org.lensward.flow;

import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Procedure;
import org.lensward.flow.SetAside.Kind;
import org.lensward.record.Changes;
import org.lensward.record.Shelf;
import org.lensward.record.UnreadableRecord;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Once a day, every active booking, and every plan whose booking is not active any more, is held against what a plan made now would
 * write. What differs was missed by the watcher, or changed with the day; it is queued. What is parked is taken up once more.
 */
public final class Reconciliation {

    private static final Logger LOG = LoggerFactory.getLogger(Reconciliation.class);

    private final Steps steps;
    private final ParkedBookings parked;
    private final ReconcileSettings settings;
    private final Clock clock;
    private Optional<Instant> next;
    private Optional<Report> last = Optional.empty();

    Reconciliation(Steps steps, ParkedBookings parked, ReconcileSettings settings, Clock clock) {
        this.steps = steps;
        this.parked = parked;
        this.settings = settings;
        this.clock = clock;
        this.next = following();
    }

    /** The steps that the routes take, taken here without writing. */
    record Steps(RecordClient client, Watcher watcher, Gatherer gatherer, BookingPlanning planning) {}

    /**
     * What was found.
     *
     * @param at when it began
     * @param took how long it took
     * @param bookings how many were looked at
     * @param missed those whose plan was missing or not current, such as {@code ServiceRequest/b1}; they are queued
     * @param unclear those that could not be gathered or read; they are queued too
     * @param takenUp how many parked bookings were taken up
     */
    public record Report(
            Instant at, Duration took, int bookings, List<String> missed, List<String> unclear, int takenUp) {}

    /** What the last one found, since the adapter started. */
    public synchronized Optional<Report> last() {
        return last;
    }

    /** When the next is due; empty for never. */
    public synchronized Optional<Instant> next() {
        return next;
    }

    /** Makes the next due at once, whatever the time of day. */
    public synchronized void dueNow() {
        next = Optional.of(clock.instant());
    }

    /** The bookings to queue, once a day; none at any other time. A look that fails is taken again at the next call. */
    public synchronized List<String> look() {
        if (next.filter(due -> !clock.instant().isBefore(due)).isEmpty()) {
            return List.of();
        }
        List<String> owed = compare();
        next = following();
        return owed;
    }

    private List<String> compare() {
        Instant start = clock.instant();
        steps.client().checkMayAsk();
        int takenUp = parked.replay(each -> each.kind() == Kind.BOOKING);
        Set<BookingName> bookings = new LinkedHashSet<>(steps.watcher().all());
        plannedWithoutBooking().forEach(bookings::add);
        List<BookingName> missed = new ArrayList<>();
        List<BookingName> unclear = new ArrayList<>();
        for (BookingName each : bookings) {
            try {
                if (steps.planning().isOwed(steps.gatherer().gather(each.toString()), each)) {
                    missed.add(each);
                }
            } catch (UnreadableRecord | RecordRefusal | BaseServerResponseException failure) {
                LOG.warn("{} not compared: {}", each.booking(), Reason.of(failure));
                unclear.add(each);
            }
        }
        Report report = new Report(
                start,
                Duration.between(start, clock.instant()),
                bookings.size(),
                names(missed),
                names(unclear),
                takenUp);
        LOG.info(
                "Compared {} bookings: {} missed, {} unclear, {} taken up",
                report.bookings(),
                report.missed().size(),
                report.unclear().size(),
                takenUp);
        last = Optional.of(report);
        return Stream.concat(missed.stream(), unclear.stream())
                .map(BookingName::toString)
                .toList();
    }

    /** Plans that stand; the booking of most of them is active and known already. */
    private Stream<BookingName> plannedWithoutBooking() {
        Shelf found = new Shelf(steps.client().gather(List.of("Procedure?status=preparation&_count=500")));
        return found.all(Procedure.class)
                .filter(Changes::isOurs)
                .filter(Procedure::hasBasedOn)
                .map(plan -> new BookingName(Shelf.name(plan.getBasedOnFirstRep()), Shelf.name(plan.getSubject())));
    }

    private static List<String> names(List<BookingName> bookings) {
        return bookings.stream().map(BookingName::booking).toList();
    }

    private Optional<Instant> following() {
        return settings.after(clock.instant().atZone(clock.getZone()));
    }
}
