package org.lensward.board.flow;

import ca.uhn.fhir.util.VersionUtil;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.camel.CamelContext;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.DryRun;
import org.lensward.flow.FlowState;
import org.lensward.flow.ParkedBookings;
import org.lensward.flow.RecordHealth;
import org.lensward.flow.SetAside;
import org.lensward.flow.WouldWrite;
import org.lensward.plan.Policy;
import org.lensward.record.UnreadableRecord;
import org.lensward.record.site.SiteCodes;
import org.springframework.boot.SpringBootVersion;

/** Tells how the flow stands and does what those who run it ask, from the page or from another program. */
public final class FlowDesk {

    private static final String OURS = "0.1.0";

    private final FlowState state;
    private final ParkedBookings parked;
    private final DryRun dryRun;
    private final CertificateWatch certificates;
    private final Installed installed;
    private final Clock clock;

    FlowDesk(FlowState state, ParkedBookings parked, DryRun dryRun, Installed installed, Clock clock) {
        this.state = state;
        this.parked = parked;
        this.dryRun = dryRun;
        this.certificates = new CertificateWatch(clock);
        this.installed = installed;
        this.clock = clock;
    }

    /**
     * What this adapter is and works with.
     *
     * @param settings its own
     * @param policy the hospital's
     * @param codes the hospital's map
     * @param camel the routes
     * @param ownTls this adapter's own address, where it is served by TLS
     */
    record Installed(
            AdapterSettings settings, Policy policy, SiteCodes codes, CamelContext camel, Optional<URI> ownTls) {}

    /** How it stands now. */
    public FlowSheet sheet() {
        Instant now = clock.instant();
        FlowState.Snapshot snapshot = state.now();
        List<FlowSheet.Aside> aside = parked.all().stream()
                .sorted(Comparator.comparing(SetAside::since))
                .map(each -> aside(each, now))
                .toList();
        return new FlowSheet(
                now,
                List.of(
                        waiting("bookings to plan", snapshot.bookings(), now),
                        waiting("bookings parked", snapshot.parked(), now),
                        waiting("messages in quarantine", snapshot.quarantined(), now)),
                snapshot.inHand(),
                snapshot.look()
                        .map(look -> new FlowSheet.Look(
                                age(look.at(), now),
                                look.bookings(),
                                look.took().toMillis())),
                health(snapshot.record(), now),
                certificates(),
                snapshot.dryRun(),
                dryRun.reports().size(),
                aside,
                reasons(aside),
                versions());
    }

    /** What a dry run would have written, one for each booking, the latest first. */
    public List<WouldWrite> wouldWrite() {
        return dryRun.reports().stream()
                .sorted(Comparator.comparing(WouldWrite::at).reversed())
                .toList();
    }

    /** Switches writing to the record off or on. */
    public void dryRun(boolean on) {
        dryRun.turn(on);
    }

    /** Takes one up again; refused where it is not set aside any more, or still cannot be stored. */
    public void replay(String kind, String name) {
        SetAside.Kind which = List.of(SetAside.Kind.values()).stream()
                .filter(each -> word(each).equals(kind))
                .findFirst()
                .orElseThrow(() ->
                        new UnreadableRecord(IssueType.VALUE, "kind", "What is set aside is a booking or a message."));
        if (!parked.replay(which, name)) {
            throw new UnreadableRecord(
                    IssueType.CONFLICT,
                    "name",
                    "Nothing of that name is set aside any more, or it still cannot be stored.");
        }
    }

    /** Takes up all of one reason; how many that were. */
    public int replayAll(String reason) {
        return parked.replay(each -> each.reason().equals(reason));
    }

    private static String word(SetAside.Kind kind) {
        return kind == SetAside.Kind.BOOKING ? "booking" : "message";
    }

    private static FlowSheet.Aside aside(SetAside each, Instant now) {
        return new FlowSheet.Aside(
                word(each.kind()), each.name(), each.reason(), each.detail(), age(each.since(), now), each.tries());
    }

    private static List<FlowSheet.Why> reasons(List<FlowSheet.Aside> aside) {
        return aside.stream()
                .collect(Collectors.groupingBy(FlowSheet.Aside::reason, TreeMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .map(each -> new FlowSheet.Why(each.getKey(), each.getValue()))
                .toList();
    }

    private static FlowSheet.Waiting waiting(String name, FlowState.Waiting queue, Instant now) {
        return new FlowSheet.Waiting(name, queue.depth(), queue.oldest().map(since -> age(since, now)));
    }

    private static FlowSheet.Health health(RecordHealth.State record, Instant now) {
        return new FlowSheet.Health(
                record.isWell(),
                record.answered().map(at -> age(at, now)),
                record.latency().toMillis(),
                record.failingSince().map(since -> age(since, now)),
                record.failure(),
                record.ahead().toMillis());
    }

    private static long age(Instant since, Instant now) {
        return Math.max(0, Duration.between(since, now).toSeconds());
    }

    private List<FlowSheet.Certificate> certificates() {
        return List.of(
                certificate(
                        "the record's",
                        Optional.of(installed.settings().record().url())),
                certificate("Lensward's own", installed.ownTls()));
    }

    private FlowSheet.Certificate certificate(String whose, Optional<URI> server) {
        Optional<URI> secured = server.filter(each -> "https".equals(each.getScheme()));
        Optional<Long> days = secured.flatMap(certificates::daysLeft);
        String told = days.map(left -> left < 0 ? "expired" : left + " days left")
                .orElse(secured.isPresent() ? "could not be seen" : "none: the address is not https");
        return new FlowSheet.Certificate(whose, days, told);
    }

    private List<FlowSheet.Version> versions() {
        return List.of(
                new FlowSheet.Version("policy", installed.policy().version()),
                new FlowSheet.Version(
                        "site-code map",
                        Optional.of(installed.codes().version())
                                .filter(each -> !each.isEmpty())
                                .orElse("none")),
                new FlowSheet.Version(
                        "Lensward",
                        Optional.ofNullable(FlowDesk.class.getPackage().getImplementationVersion())
                                .orElse(OURS)),
                new FlowSheet.Version("Java", Runtime.version().toString()),
                new FlowSheet.Version("Camel", installed.camel().getVersion()),
                new FlowSheet.Version("HAPI FHIR", VersionUtil.getVersion()),
                new FlowSheet.Version("Spring Boot", SpringBootVersion.getVersion()));
    }
}
