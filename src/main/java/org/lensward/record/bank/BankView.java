package org.lensward.record.bank;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Device;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;

/**
 * The bank kept in memory for those who look at all of it: read whole once, then only what changed since; whole again when the record counts
 * another number of cartons than are here. It serves looking alone: whoever moves a carton reads it anew.
 */
public final class BankView {

    /** For clocks that differ and transactions that surface late. */
    private static final Duration OVERLAP = Duration.ofSeconds(150);

    private final RecordDoor door;
    private final UnitReader reader;
    private final Clock clock;
    private final Map<String, Outcome<List<LensUnit>>> cartons = new LinkedHashMap<>();
    private final Map<String, Instant> moved = new HashMap<>();
    private List<Finding> gaps = List.of();
    private int missing;
    private Optional<Standing> standing = Optional.empty();

    public BankView(FhirContext fhir, RecordDoor door, Clock clock) {
        this.door = door;
        this.reader = new UnitReader(new Evidences(fhir));
        this.clock = clock;
    }

    /**
     * The bank at one moment.
     *
     * @param units every carton that can be read
     * @param findings about the others
     * @param asOf when the record was asked
     */
    public record Standing(List<LensUnit> units, List<Finding> findings, Instant asOf) {

        public Standing {
            units = List.copyOf(units);
            findings = List.copyOf(findings);
        }
    }

    /** As it was last read; none before the first reading. Never waits. */
    public synchronized Optional<Standing> standing() {
        return standing;
    }

    /** A carton that was just moved or taken in stands so at once. */
    public synchronized void moved(LensUnit unit) {
        String name = unit.evidence().resource();
        cartons.put(name, Outcome.ready(List.of(unit)));
        moved.put(name, clock.instant());
        standing = standing.map(before -> stands(before.asOf()));
    }

    /** Reads what changed; one reader at a time, from one thread. */
    public Standing refresh() {
        Optional<Instant> since = standing().map(Standing::asOf);
        Instant start = clock.instant();
        if (since.isEmpty()) {
            return whole(start);
        }
        Standing now = changes(since.get(), start);
        return isComplete() ? now : whole(start);
    }

    private Standing changes(Instant since, Instant start) {
        String search = WholeBank.SEARCH + "&_lastUpdated=ge"
                + since.minus(OVERLAP).truncatedTo(ChronoUnit.MILLIS) + "&_count=500";
        return take(new Shelf(door.gather(List.of(search))).all(Device.class), start);
    }

    /** As complete as it was when it was last read whole. */
    private boolean isComplete() {
        int counted = door.count(WholeBank.SEARCH);
        synchronized (this) {
            return counted - cartons.size() == missing;
        }
    }

    private Standing whole(Instant start) {
        Outcome<List<Device>> read = WholeBank.read(door, WholeBank.PART);
        int counted = door.count(WholeBank.SEARCH);
        synchronized (this) {
            cartons.keySet().removeIf(name -> !isNewer(name, start));
            gaps = read.findings();
            Standing now = take(read.value().orElseThrow().stream(), start);
            missing = gaps.isEmpty() ? 0 : counted - cartons.size();
            return now;
        }
    }

    private synchronized Standing take(Stream<Device> devices, Instant start) {
        devices.filter(device -> !isNewer(Shelf.name(device), start))
                .forEach(device -> cartons.put(Shelf.name(device), reader.readAll(Stream.of(device))));
        moved.values().removeIf(at -> at.isBefore(start.minus(OVERLAP)));
        Standing now = stands(start);
        standing = Optional.of(now);
        return now;
    }

    private boolean isNewer(String name, Instant start) {
        return moved.containsKey(name) && !moved.get(name).isBefore(start);
    }

    private Standing stands(Instant asOf) {
        List<LensUnit> units = new ArrayList<>();
        List<Finding> findings = new ArrayList<>(gaps);
        cartons.values().forEach(each -> {
            units.addAll(each.value().orElse(List.of()));
            findings.addAll(each.findings());
        });
        return new Standing(units, findings, asOf);
    }
}
