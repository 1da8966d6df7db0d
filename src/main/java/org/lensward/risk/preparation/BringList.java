package org.lensward.risk.preparation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.lensward.eye.Allergen;
import org.lensward.lens.LensKit;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/**
 * What has to lie ready, for one eye or a whole day.
 *
 * @param things each kind with its particulars once, in the order of the vocabulary
 * @param lenses of the kits, in the order of their roles, models and powers
 */
public record BringList(List<Bring> things, List<LensToBring> lenses) {

    private static final Comparator<LensToBring> ORDER = Comparator.comparing(LensToBring::role)
            .thenComparing(LensToBring::model)
            .thenComparing(LensToBring::power);

    public BringList {
        things = List.copyOf(things);
        lenses = List.copyOf(lenses);
    }

    /** Which things count as the same. */
    private record Kind(TheatreItem item, String particulars) implements Comparable<Kind> {

        private static final Comparator<Kind> ORDER =
                Comparator.comparing(Kind::item).thenComparing(Kind::particulars);

        @Override
        public int compareTo(Kind other) {
            return ORDER.compare(this, other);
        }
    }

    /** For one eye: asked for twice, a thing is brought once, in the larger number. */
    public static BringList ofEye(Collection<Bring> wanted) {
        return new BringList(merge(wanted, Set.of(TheatreItem.values())), List.of());
    }

    /** For a day: what is used up adds up, what is shared serves one eye after the other. */
    public static BringList ofDay(Collection<BringList> eyes, Set<TheatreItem> shared) {
        List<Bring> things = eyes.stream().flatMap(eye -> eye.things().stream()).toList();
        List<LensToBring> lenses = eyes.stream()
                .flatMap(eye -> eye.lenses().stream())
                .sorted(ORDER)
                .toList();
        return new BringList(merge(things, shared), counted(lenses));
    }

    /** The same eye with what else is wanted for it. */
    public BringList and(Collection<Bring> more) {
        return new BringList(
                ofEye(Stream.concat(things.stream(), more.stream()).toList()).things(), lenses);
    }

    /** The same eye with the lenses of its kit, the back-ups among them. */
    public BringList and(LensKit kit) {
        List<LensToBring> all = Stream.concat(
                        lenses.stream(), kit.all().stream().map(LensToBring::of))
                .sorted(ORDER)
                .toList();
        return new BringList(things, counted(all));
    }

    private static List<Bring> merge(Collection<Bring> wanted, Set<TheatreItem> once) {
        Map<Kind, Bring> merged = new TreeMap<>();
        wanted.forEach(each ->
                merged.merge(new Kind(each.item(), each.particulars()), each, (one, other) -> join(one, other, once)));
        return List.copyOf(merged.values());
    }

    private static Bring join(Bring one, Bring other, Set<TheatreItem> once) {
        int count = once.contains(one.item()) ? Math.max(one.count(), other.count()) : one.count() + other.count();
        Set<Allergen> contains = new TreeSet<>(one.contains());
        contains.addAll(other.contains());
        return new Bring(one.item(), count, one.particulars(), contains, reasons(one, other));
    }

    private static String reasons(Bring one, Bring other) {
        return Stream.of(one.reason(), other.reason())
                .flatMap(reason -> Stream.of(reason.split("; ")))
                .filter(reason -> !reason.isEmpty())
                .collect(Collectors.toCollection(LinkedHashSet::new))
                .stream()
                .collect(Collectors.joining("; "));
    }

    private static List<LensToBring> counted(List<LensToBring> sorted) {
        List<LensToBring> counted = new ArrayList<>();
        for (LensToBring lens : sorted) {
            int last = counted.size() - 1;
            if (last >= 0 && counted.get(last).isLike(lens)) {
                counted.set(last, counted.get(last).plus(lens));
            } else {
                counted.add(lens);
            }
        }
        return counted;
    }
}
