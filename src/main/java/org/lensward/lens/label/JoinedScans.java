package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_AMBIGUOUS;
import static org.lensward.finding.FindingCode.LABEL_DATE_IMPOSSIBLE;
import static org.lensward.finding.FindingCode.LABEL_LINK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_WITHOUT_DEVICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.label.LabelFact.Device;
import org.lensward.lens.label.LabelFact.Expiry;
import org.lensward.lens.label.LabelFact.Link;
import org.lensward.lens.label.LabelFact.Lot;
import org.lensward.lens.label.LabelFact.Production;
import org.lensward.lens.label.LabelFact.Quantity;
import org.lensward.lens.label.LabelFact.Serial;

/**
 * The scans of one carton as one label: a linear label may need two barcodes. They must name one device and agree in whatever both say.
 *
 * @param scans what each says
 * @param where where they stand
 */
record JoinedScans(List<ScanFacts> scans, Evidence where) {

    /** The label, or everything that speaks against it. */
    Outcome<CartonLabel> label(String raw) {
        List<Finding> against = Stream.of(twoIssuers(), twoValues(), wrongLinks(), expiredWhenMade())
                .flatMap(List::stream)
                .toList();
        if (!against.isEmpty()) {
            return Outcome.withheld(against);
        }
        return first(Device.class)
                .map(device -> Outcome.ready(label(device, raw)))
                .orElseGet(() -> Outcome.withheld(Finding.of(LABEL_WITHOUT_DEVICE, where, whatThereIs())));
    }

    private CartonLabel label(Device device, String raw) {
        return new CartonLabel(
                device.issuer(),
                device.said(),
                first(Lot.class).map(Lot::said),
                first(Serial.class).map(Serial::said),
                first(Expiry.class).map(Expiry::day),
                first(Production.class).map(Production::day),
                first(Quantity.class).map(Quantity::pieces),
                raw);
    }

    private List<Finding> twoIssuers() {
        boolean two = scans.stream().map(ScanFacts::issuer).distinct().count() > 1;
        return two ? List.of(Finding.of(LABEL_AMBIGUOUS, where, "a GS1 and a HIBC barcode")) : List.of();
    }

    private List<Finding> twoValues() {
        List<Finding> found = new ArrayList<>();
        for (Class<? extends LabelFact> kind :
                List.of(Device.class, Lot.class, Serial.class, Expiry.class, Production.class, Quantity.class)) {
            List<? extends LabelFact> all = all(kind);
            if (all.size() > 1) {
                String said = all.stream().map(LabelFact::said).collect(Collectors.joining(" and "));
                found.add(Finding.of(LABEL_AMBIGUOUS, where, all.get(0).word() + " " + said));
            }
        }
        return found;
    }

    /** The link of a secondary barcode is the check character of its primary (ANSI/HIBC 2.6 section 2.3). */
    private List<Finding> wrongLinks() {
        return first(Device.class)
                .map(device -> Modulo43.of("+" + device.said()))
                .map(check -> all(Link.class).stream()
                        .filter(link -> link.character() != check)
                        .map(link -> Finding.of(LABEL_LINK_WRONG, where, link.said(), check))
                        .toList())
                .orElse(List.of());
    }

    private List<Finding> expiredWhenMade() {
        Optional<Finding> found = first(Expiry.class).flatMap(expiry -> first(Production.class)
                .filter(production -> production.day().isAfter(expiry.day()))
                .map(production -> Finding.of(
                        LABEL_DATE_IMPOSSIBLE,
                        where,
                        "made on " + production.said() + ", expired on " + expiry.said())));
        return found.stream().toList();
    }

    /** The kinds alone: what names no device may be something else altogether, and a patient's. */
    private String whatThereIs() {
        String said = scans.stream()
                .flatMap(scan -> scan.facts().stream())
                .map(LabelFact::word)
                .distinct()
                .collect(Collectors.joining(", "));
        return said.isEmpty() ? "nothing of use" : said;
    }

    private <T extends LabelFact> List<T> all(Class<T> kind) {
        return scans.stream()
                .flatMap(scan -> scan.facts().stream())
                .filter(kind::isInstance)
                .map(kind::cast)
                .distinct()
                .toList();
    }

    private <T extends LabelFact> Optional<T> first(Class<T> kind) {
        return all(kind).stream().findFirst();
    }
}
