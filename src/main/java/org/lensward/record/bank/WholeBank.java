package org.lensward.record.bank;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Device;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/**
 * Every carton of the bank, however many, page after page. Where fewer come than the record counts, the search is split by the time of the last change until each part is small; the
 * parts are read oldest first, so that a carton that moves meanwhile moves into a part still to be read.
 */
final class WholeBank {

    static final String SEARCH = "Device?type=" + Systems.DEVICE_TYPE + "|" + UnitDevice.TYPE;
    static final int PART = 1_000;

    private static final Instant FIRST = Instant.parse("2000-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("2100-01-01T00:00:00Z");
    private static final Duration SHORTEST = Duration.ofMillis(1);

    private final RecordDoor door;
    private final int part;
    private final Map<String, Device> devices = new LinkedHashMap<>();
    private final List<Finding> found = new ArrayList<>();

    private WholeBank(RecordDoor door, int part) {
        this.door = door;
        this.part = part;
    }

    /**
     * All Devices that are lenses, with a finding for each part of which the record gave fewer than it counts.
     *
     * @param part how many a search must give whole
     */
    static Outcome<List<Device>> read(RecordDoor door, int part) {
        WholeBank bank = new WholeBank(door, part);
        if (!bank.take(SEARCH).isEmpty()) {
            bank.split(FIRST, LAST);
        }
        return Outcome.ready(List.copyOf(bank.devices.values()), bank.found);
    }

    private void split(Instant from, Instant to) {
        String window = SEARCH + "&_lastUpdated=ge" + from + "&_lastUpdated=lt" + to;
        int count = door.count(window);
        Duration length = Duration.between(from, to);
        if (count > part && length.compareTo(SHORTEST) > 0) {
            Instant middle = Instant.ofEpochMilli(from.plus(length.dividedBy(2)).toEpochMilli());
            split(from, middle);
            split(middle, to);
        } else if (count > 0) {
            found.addAll(take(window));
        }
    }

    private List<Finding> take(String search) {
        Outcome<List<Device>> given = CountedSearch.take(door, search);
        given.value().orElseThrow().forEach(device -> devices.put(Shelf.name(device), device));
        return given.findings();
    }
}
