package org.lensward.flow;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.record.Changes;
import org.lensward.record.Shelf;
import org.lensward.record.site.SiteSearch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds the bookings touched by whatever changed in the record. The first look takes every active booking, so a restart misses
 * nothing; later looks cost what has changed, not what is stored. A look counts only once its bookings are safely queued.
 */
public final class Watcher {

    static final List<String> WATCHED = List.of(
            "ServiceRequest",
            "Appointment",
            "Patient",
            "Observation",
            "Condition",
            "Procedure",
            "MedicationStatement",
            "MedicationRequest",
            "AllergyIntolerance",
            "BodyStructure",
            "DeviceDefinition");

    private static final Logger LOG = LoggerFactory.getLogger(Watcher.class);

    private static final int PATIENTS_PER_QUESTION = 40;

    private final RecordClient client;
    private final AdapterSettings.Watch settings;
    private final SiteSearch search;
    private final String active;
    private final Clock clock;
    private volatile Optional<Instant> cursor = Optional.empty();
    private Instant looked = Instant.MIN;
    private Map<String, Instant> seen = new HashMap<>();
    private Map<String, Instant> noticed = new HashMap<>();
    private int found;
    /** How often a look at everything was wanted, is being taken, and was taken. */
    private int wanted;

    private int answering;
    private int answered;
    private Optional<Look> last = Optional.empty();

    /**
     * A watcher of one record.
     *
     * @param client the record
     * @param settings how often and how far back
     * @param search what a booking is
     * @param clock ours
     */
    public Watcher(RecordClient client, AdapterSettings.Watch settings, SiteSearch search, Clock clock) {
        this.client = client;
        this.settings = settings;
        this.search = search;
        this.active = "ServiceRequest?status=active&code=" + search.bookings();
        this.clock = clock;
    }

    /**
     * A look that was taken and whose bookings are queued.
     *
     * @param at when
     * @param bookings how many it found to plan
     * @param took how long it took
     */
    public record Look(Instant at, int bookings, Duration took) {}

    /** The last look that counted. */
    public synchronized Optional<Look> last() {
        return last;
    }

    /** The next look takes every active booking, as the first one did. */
    public synchronized void startAnew() {
        wanted++;
    }

    /** Whether it is time: of several adapters that ring, one look answers all. */
    public synchronized boolean isDue() {
        return !clock.instant().isBefore(looked.plus(settings.interval().dividedBy(2)));
    }

    /** The bookings to plan, each once, as the queue carries them. */
    public synchronized List<String> look() {
        client.checkMayAsk();
        if (cursor.isEmpty()) {
            LOG.info("Watching the record from here");
        }
        answering = wanted;
        looked = clock.instant();
        noticed = new HashMap<>();
        Set<BookingName> bookings = cursor.isPresent() && answering == answered ? touched(cursor.get()) : all();
        found = bookings.size();
        return bookings.stream().map(BookingName::toString).toList();
    }

    /** The bookings of the last look are queued: the next one starts from there. */
    public synchronized void queued() {
        cursor = Optional.of(looked);
        answered = answering;
        last = Optional.of(new Look(looked, found, Duration.between(looked, clock.instant())));
        seen.putAll(noticed);
        Instant forgotten = looked.minus(settings.overlap().multipliedBy(2));
        seen = seen.entrySet().stream()
                .filter(each -> each.getValue().isAfter(forgotten))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, HashMap::new));
    }

    /** When the last look that counted was taken; nothing before the first. */
    public Optional<Instant> lastLook() {
        return cursor;
    }

    /** A record whose clock runs behind ours dates a change earlier than we should think. */
    private Instant onItsClock(Instant ours) {
        Duration ahead = client.health().now().ahead();
        return ahead.isNegative() ? ours.plus(ahead) : ours;
    }

    /** Every active booking. */
    Set<BookingName> all() {
        return names(client.gather(List.of(active + "&_count=" + settings.pageSize())));
    }

    private Set<BookingName> touched(Instant since) {
        Duration overlap = settings.overlap();
        String from = "_lastUpdated=ge" + onItsClock(since).minus(overlap).truncatedTo(ChronoUnit.MILLIS) + "&_count="
                + settings.pageSize();
        Bundle changed =
                client.gather(WATCHED.stream().map(type -> type + "?" + from).toList());
        List<Resource> news = changed.getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .filter(this::isNew)
                .toList();
        if (news.stream().anyMatch(Changes::concernsEveryBooking)) {
            return all();
        }
        Set<BookingName> bookings = new LinkedHashSet<>();
        news.stream().flatMap(each -> booking(each).stream()).forEach(bookings::add);
        Set<String> patients =
                news.stream().flatMap(each -> Changes.patient(each).stream()).collect(Collectors.toSet());
        Set<String> others = news.stream().flatMap(Changes::bookings).collect(Collectors.toSet());
        bookings.addAll(active(patients, others));
        return bookings;
    }

    private boolean isNew(Resource resource) {
        String version = Shelf.versionedName(resource);
        boolean isNew = !seen.containsKey(version);
        noticed.put(version, looked);
        return isNew && !Changes.isOurs(resource);
    }

    private Set<BookingName> active(Set<String> patients, Set<String> bookings) {
        List<String> questions = new ArrayList<>();
        for (List<String> some : chunks(patients)) {
            questions.add(active + "&subject=" + String.join(",", some) + "&_count=" + settings.pageSize());
        }
        for (List<String> some : chunks(bookings)) {
            String ids = some.stream()
                    .map(each -> each.replace("ServiceRequest/", ""))
                    .collect(Collectors.joining(","));
            questions.add(active + "&_id=" + ids + "&_count=" + settings.pageSize());
        }
        return questions.isEmpty() ? Set.of() : names(client.gather(questions));
    }

    private static List<List<String>> chunks(Set<String> names) {
        List<String> all = names.stream().sorted().toList();
        List<List<String>> chunks = new ArrayList<>();
        for (int from = 0; from < all.size(); from += PATIENTS_PER_QUESTION) {
            chunks.add(all.subList(from, Math.min(all.size(), from + PATIENTS_PER_QUESTION)));
        }
        return chunks;
    }

    private Set<BookingName> names(Bundle found) {
        return found.getEntry().stream()
                .flatMap(entry -> booking(entry.getResource()).stream())
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private Optional<BookingName> booking(Resource resource) {
        return resource instanceof ServiceRequest request && search.isBooking(request)
                ? Optional.of(new BookingName(Shelf.name(request), Shelf.name(request.getSubject())))
                : Optional.empty();
    }
}
