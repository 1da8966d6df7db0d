package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.BANK_INCOMPLETE;

import java.util.List;
import org.hl7.fhir.r4.model.Device;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.record.Shelf;

/** A search whose answer is counted, for a server may end a long one without a word. */
final class CountedSearch {

    private static final String PAGE = "&_count=500";

    private CountedSearch() {}

    /** What the search gives, each Device once; with a finding if that is fewer than were there before and after. */
    static Outcome<List<Device>> take(RecordDoor door, String search) {
        int before = door.count(search);
        List<Device> given =
                new Shelf(door.gather(List.of(search + PAGE))).all(Device.class).toList();
        int counted = given.size() < before ? Math.min(before, door.count(search)) : before;
        return given.size() < counted
                ? Outcome.ready(
                        given,
                        List.of(Finding.of(BANK_INCOMPLETE, new Evidence("Device", "", ""), counted, given.size())))
                : Outcome.ready(given);
    }
}
