package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.RECALL_LOT_UNRECORDED;
import static org.lensward.finding.FindingCode.RECALL_PATIENTS_DIFFER;
import static org.lensward.finding.FindingCode.RECALL_PATIENT_UNKNOWN;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Device;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.record.Evidences;
import org.lensward.record.Shelf;
import org.lensward.record.bank.Recall.RecalledUnit;

/** Answers a recall: every carton of the lot, where it is, who is to have it and who has it in the eye. */
final class RecallSearch {

    private final RecordDoor door;
    private final Evidences evidences;
    private final UnitReader reader;
    private final List<Finding> found = new ArrayList<>();

    RecallSearch(RecordDoor door, Evidences evidences) {
        this.door = door;
        this.evidences = evidences;
        this.reader = new UnitReader(evidences);
    }

    Recall find(RecalledLot lot, Lookup lookup) {
        List<Device> devices = (lookup == Lookup.INDEXED ? indexed(lot) : whole())
                .stream().filter(lot::mayBe).toList();
        Wearers wearers = Wearers.of(door, devices);
        List<RecalledUnit> units =
                devices.stream().map(device -> unit(device, wearers)).toList();
        return new Recall(lot.lot(), units, found);
    }

    private List<Device> whole() {
        return counted(WholeBank.read(door, WholeBank.PART));
    }

    private List<Device> counted(Outcome<List<Device>> given) {
        found.addAll(given.findings());
        return given.value().orElseThrow();
    }

    private List<Device> indexed(RecalledLot lot) {
        String value = URLEncoder.encode(lot.lot().strip(), StandardCharsets.UTF_8);
        return Stream.of("&device-lot=" + value, "&device-lot:missing=true")
                .map(condition -> CountedSearch.take(door, WholeBank.SEARCH + condition))
                .flatMap(given -> counted(given).stream())
                .toList();
    }

    private RecalledUnit unit(Device device, Wearers wearers) {
        Outcome<LensUnit> read = reader.read(device);
        found.addAll(read.findings());
        RecalledUnit unit = new RecalledUnit(
                evidences.of(device, ""),
                read.value(),
                RecalledLot.hasLot(device),
                Optional.of(Shelf.name(device.getLocation())).filter(name -> !name.isEmpty()),
                wearers.patients(device),
                wearers.operations(device));
        if (!unit.certain()) {
            found.add(Finding.of(RECALL_LOT_UNRECORDED, unit.evidence()));
        }
        if (unit.isImplanted() && unit.patients().isEmpty()) {
            found.add(Finding.of(RECALL_PATIENT_UNKNOWN, unit.evidence()));
        }
        if (unit.patients().size() > 1) {
            found.add(Finding.of(RECALL_PATIENTS_DIFFER, unit.evidence(), String.join(", ", unit.patients())));
        }
        return unit;
    }
}
