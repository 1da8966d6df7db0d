package org.lensward.lens.label;

import static org.lensward.finding.FindingCode.LABEL_CHECK_WRONG;
import static org.lensward.finding.FindingCode.LABEL_OF_LARGER_BOX;

import java.util.List;
import org.lensward.finding.Outcome;

/** Reads what GS1 labels of medical devices say: (01), (10), (11), (17), (21), (30). Other elements are measured and left aside. */
final class Gs1Reader {

    private final Reading reading;

    Gs1Reader(Reading reading) {
        this.reading = reading;
    }

    /** What the elements say, or everything that is wrong with them. */
    Outcome<ScanFacts> read(List<Element> elements) {
        return Gathered.of(elements.stream().map(this::fact).toList())
                .then(facts -> Outcome.ready(new ScanFacts(Issuer.GS1, facts)));
    }

    private Outcome<List<LabelFact>> fact(Element element) {
        String value = element.value();
        LabelDates dates = reading.dates();
        return switch (element.identifier().code()) {
            case "00", "02" -> reading.refuse(LABEL_OF_LARGER_BOX, element.identifier() + value);
            case "01" ->
                Modulo10.holds(value)
                        ? Outcome.ready(List.of(new LabelFact.Device(Issuer.GS1, value)))
                        : reading.refuse(LABEL_CHECK_WRONG, element.identifier() + value);
            case "10" -> Outcome.ready(List.of(new LabelFact.Lot(value)));
            case "11" -> reading.onDay(dates.yearMonthDay0(value), LabelFact.Production::new, "(11)" + value);
            case "17" -> reading.onDay(dates.yearMonthDay0(value), LabelFact.Expiry::new, "(17)" + value);
            case "21" -> Outcome.ready(List.of(new LabelFact.Serial(value)));
            case "30" -> Outcome.ready(List.of(new LabelFact.Quantity(Integer.parseInt(value))));
            default -> Outcome.ready(List.of());
        };
    }
}
