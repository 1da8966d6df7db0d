package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_EMPTY;

import java.time.LocalDate;
import java.util.List;
import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;

/**
 * Reads the label of a carton from its scans: GS1 element strings, as a barcode carries them or as printed in brackets, and HIBC labels.
 * What it cannot read for certain it refuses, and says why; it repairs nothing.
 *
 * <p>Three faults no reader can see, only a comparison with the bank's unit: a GS1 lot or serial cut short at the end of a scan; a separator
 * lost between two short GS1 values, which then read as one; and a second GS1 barcode of another carton, for it names no device.
 */
public final class LabelReader {

    private final LabelDates dates;

    /**
     * A reader for one day.
     *
     * @param today the day of reading, against which a year of two digits finds its century
     */
    public LabelReader(LocalDate today) {
        this.dates = new LabelDates(today);
    }

    /** The label of one scan. */
    public Outcome<CartonLabel> read(String scanned, Evidence where) {
        return read(List.of(scanned), where);
    }

    /** The label that several scans of one carton make, in any order: primary and secondary barcode, or one scanned twice. */
    public Outcome<CartonLabel> read(List<String> scans, Evidence where) {
        Reading reading = new Reading(where, dates);
        if (scans.isEmpty()) {
            return reading.refuse(LABEL_EMPTY);
        }
        List<Outcome<List<ScanFacts>>> read =
                scans.stream().map(scan -> facts(scan, reading)).toList();
        return Gathered.of(read).then(facts -> new JoinedScans(facts, where).label(String.join("\n", scans)));
    }

    private static Outcome<List<ScanFacts>> facts(String scanned, Reading reading) {
        Gs1Reader gs1 = new Gs1Reader(reading);
        ElementString elements = new ElementString(reading);
        return Scan.of(scanned, reading)
                .then(scan -> switch (scan.form()) {
                    case ELEMENTS -> elements.elements(scan.text()).then(gs1::read);
                    case BRACKETED -> elements.bracketed(scan.text()).then(gs1::read);
                    case HIBC -> new HibcReader(reading).read(scan.text());
                })
                .then(facts -> Outcome.ready(List.of(facts)));
    }
}
