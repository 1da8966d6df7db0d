package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.BANK_INCOMPLETE;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Device;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/**
 * Every carton of the bank, however many. A server may end a search silently at some number, so a search that would find more than a few
 * thousand is split by the time of the last change until each part is small, and each part is counted. The parts are read oldest first: a
 * carton that moves meanwhile moves into a part still to be read.
 */
final class WholeBank {

    static final String SEARCH = "Device?type=" + Systems.DEVICE_TYPE + "|" + UnitDevice.TYPE;
    static final int PART = 4_000;

    private static final Instant FIRST = Instant.parse("2000-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("2100-01-01T00:00:00Z");
    private static final Duration SHORTEST = Duration.ofMillis(1);
    private static final String PAGE = "&_count=500";

    private final RecordDoor door;
    private final int part;
    private final Map<String, Device> devices = new LinkedHashMap<>();
    private final List<Finding> found = new ArrayList<>();

    private WholeBank(RecordDoor door, int part) {
        this.door = door;
        this.part = part;
    }

    /** All Devices that are lenses, with a finding for each part of which the record gave fewer than it counts. */
    static Outcome<List<Device>> read(RecordDoor door, int part) {
        WholeBank bank = new WholeBank(door, part);
        if (door.count(SEARCH) <= part) {
            bank.take(SEARCH);
        } else {
            bank.split(FIRST, LAST);
        }
        return Outcome.ready(List.copyOf(bank.devices.values()), bank.found);
    }

    private void split(Instant from, Instant to) {
        String window = SEARCH + "&_lastUpdated=ge" + from + "&_lastUpdated=lt" + to;
        int count = door.count(window);
        Duration length = Duration.between(from, to);
        if (count <= part || length.compareTo(SHORTEST) <= 0) {
            if (count > 0) {
                take(window);
            }
            return;
        }
        Instant middle = Instant.ofEpochMilli(from.plus(length.dividedBy(2)).toEpochMilli());
        split(from, middle);
        split(middle, to);
    }

    private void take(String search) {
        int before = door.count(search);
        List<Device> given = door.gather(List.of(search + PAGE)).getEntry().stream()
                .map(entry -> entry.getResource())
                .filter(Device.class::isInstance)
                .map(Device.class::cast)
                .toList();
        given.forEach(device -> devices.put(Shelf.name(device), device));
        if (given.size() < before) {
            int counted = Math.min(before, door.count(search));
            if (given.size() < counted) {
                found.add(Finding.of(BANK_INCOMPLETE, new Evidence("Device", "", ""), counted, given.size()));
            }
        }
    }
}
