package org.lensward.plan.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.lensward.quantity.Dioptres;

/**
 * Suggests the order of one theatre's list. What has a place keeps it (common practice, no source); within that, as few namesakes next to
 * each other as can be, then as few similar powers, then the least moving about of what was booked. Optimal for up to {@value #EXACT}
 * eyes at once, which is more than one theatre operates on in half a day; a longer list is ordered in stretches, each joined to the one
 * before. It only suggests: a person orders the list.
 */
public final class ListOrder {

    /** So many eyes are ordered at once: 2^14 sets of 14 last eyes each. */
    static final int EXACT = 14;

    private final Dioptres similar;

    /**
     * With the hospital's idea of similar.
     *
     * @param similar powers no further apart are kept apart on the list
     */
    public ListOrder(Dioptres similar) {
        this.similar = similar;
    }

    /** The order to suggest for eyes given as they were booked. */
    public List<SuggestedTurn> suggest(List<ListedEye> booked) {
        List<ListedEye> placed =
                booked.stream().sorted(Comparator.comparing(ListedEye::place)).toList();
        List<ListedEye> order = new ArrayList<>();
        for (int from = 0; from < placed.size(); from += EXACT) {
            List<ListedEye> stretch = placed.subList(from, Math.min(from + EXACT, placed.size()));
            order.addAll(new Stretch(stretch, order, similar).best());
        }
        return IntStream.range(0, order.size())
                .mapToObj(index -> new SuggestedTurn(order.get(index), reasons(order, index)))
                .toList();
    }

    private List<String> reasons(List<ListedEye> order, int index) {
        List<String> reasons = new ArrayList<>(order.get(index).reasons());
        if (index > 0) {
            ListedEye eye = order.get(index);
            ListedEye before = order.get(index - 1);
            if (eye.isNamesakeOf(before)) {
                reasons.add("mind the namesake before: the list leaves no room between");
            }
            if (eye.hasPowerLike(before, similar)) {
                reasons.add("mind the similar power before: the list leaves no room between");
            }
        }
        return reasons;
    }
}
