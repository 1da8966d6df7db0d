package org.lensward.board;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.codec.language.DoubleMetaphone;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Patient;
import org.lensward.plan.order.ListOrder;
import org.lensward.plan.order.ListedEye;
import org.lensward.plan.order.Placing;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.preparation.BringList;
import org.lensward.risk.preparation.PreparationPolicy;

/** Makes a sheet for each theatre and day of what the record holds. */
public final class DaySheets {

    private DaySheets() {}

    /**
     * A sheet for each theatre and day.
     *
     * @param shelf bookings with their patients, appointments and plans
     * @param policy what is shared over a day and which powers are similar
     */
    public static List<DaySheet> of(Shelf shelf, PreparationPolicy policy) {
        Map<List<String>, List<StoredPlan>> byTheatre = StoredPlan.all(shelf)
                .sorted(Comparator.comparing((StoredPlan stored) -> start(shelf, stored))
                        .thenComparing(stored -> stored.booking().getIdElement().getIdPart()))
                .collect(Collectors.groupingBy(
                        stored -> List.of(day(shelf, stored), theatre(shelf, stored)),
                        LinkedHashMap::new,
                        Collectors.toList()));
        return byTheatre.entrySet().stream()
                .map(each -> sheet(each.getKey(), each.getValue(), shelf, policy))
                .sorted(Comparator.comparing(DaySheet::day).thenComparing(DaySheet::theatre))
                .toList();
    }

    private static DaySheet sheet(List<String> key, List<StoredPlan> plans, Shelf shelf, PreparationPolicy policy) {
        List<ListedEye> eyes =
                plans.stream().map(stored -> listed(shelf, stored)).toList();
        List<BringList> wanted = plans.stream()
                .filter(stored -> stored.primary().isPresent())
                .map(stored -> BringList.ofEye(stored.bring()))
                .toList();
        return new DaySheet(
                key.get(0),
                key.get(1),
                new ListOrder(policy.similarPowers().value()).suggest(eyes),
                BringList.ofDay(wanted, policy.shared()),
                lenses(plans));
    }

    private static ListedEye listed(Shelf shelf, StoredPlan stored) {
        boolean withoutLatex = stored.bring().stream().anyMatch(each -> each.item() == TheatreItem.LATEX_FREE_SET);
        Placing placing = Placing.of(stored.primary().isPresent(), withoutLatex, stored.found());
        return new ListedEye(
                Shelf.name(stored.booking()),
                Shelf.name(stored.booking().getSubject()),
                shelf.find(Patient.class, stored.booking().getSubject())
                        .map(DaySheets::likeness)
                        .orElse(Set.of()),
                stored.primary().flatMap(StoredPlan::labelled),
                placing.place(),
                placing.reasons());
    }

    /** Two patients with one family name, however it is spelt, or one birth date may be taken for each other. */
    private static Set<String> likeness(Patient patient) {
        Set<String> keys = new LinkedHashSet<>();
        DoubleMetaphone sound = new DoubleMetaphone();
        patient.getName().stream()
                .map(HumanName::getFamily)
                .flatMap(Stream::ofNullable)
                .map(DaySheets::plain)
                .filter(name -> !name.isEmpty())
                .forEach(name -> {
                    keys.add("name " + name);
                    keys.add("sound " + sound.doubleMetaphone(name));
                });
        if (patient.hasBirthDate()) {
            keys.add("born " + patient.getBirthDateElement().getValueAsString());
        }
        return keys;
    }

    private static String plain(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\P{L}", "")
                .toLowerCase(Locale.ROOT);
    }

    private static Map<String, Integer> lenses(Collection<StoredPlan> plans) {
        Map<String, Integer> lenses = new LinkedHashMap<>();
        plans.stream()
                .flatMap(stored -> stored.kit().stream())
                .map(lens -> lens.getCodeCodeableConcept().getText() + " " + StoredPlan.power(lens) + ", "
                        + StoredPlan.role(lens).replace('-', ' '))
                .sorted()
                .forEach(lens -> lenses.merge(lens, 1, Integer::sum));
        return lenses;
    }

    private static String start(Shelf shelf, StoredPlan stored) {
        return TheatreList.start(shelf, stored.booking());
    }

    private static String day(Shelf shelf, StoredPlan stored) {
        String start = start(shelf, stored);
        return start.length() < 10 ? start : start.substring(0, 10);
    }

    private static String theatre(Shelf shelf, StoredPlan stored) {
        return shelf.all(Appointment.class)
                .filter(each -> Shelf.refers(each.getBasedOn(), stored.booking()))
                .map(each -> each.hasDescription() ? each.getDescription() : "theatre not stated")
                .findFirst()
                .orElse("theatre not stated");
    }
}
