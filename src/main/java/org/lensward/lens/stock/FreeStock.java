package org.lensward.lens.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Cartons nobody is promised once the stock check is done. */
public final class FreeStock {

    private final List<LensUnit> units;
    private final Reach reach;

    FreeStock(List<LensUnit> units, Reach reach) {
        this.units = units;
        this.reach = reach;
    }

    /** The cartons, the first to expire first. */
    public List<LensUnit> units() {
        return units;
    }

    /**
     * The nearest power in stock for each shortage, in their order: no carton is offered twice. Of two equally near the stronger, which
     * leaves the eye more myopic; of its cartons the nearest to hand, then the first to expire.
     *
     * @param shortages what is short, most urgent first
     * @param planned other powers of the same model as the plan predicts them; the power that is short is passed over
     */
    public List<Offer> offers(List<Shortage> shortages, Function<LensNeed, List<Alternative>> planned) {
        Map<LensKind, List<LensUnit>> left =
                units.stream().collect(Collectors.groupingBy(LensKind::of, Collectors.toCollection(ArrayList::new)));
        List<Offer> offers = new ArrayList<>();
        for (Shortage shortage : shortages) {
            if (shortage.reason() != ShortageReason.DAY_PAST) {
                offer(shortage.need(), planned.apply(shortage.need()), left).ifPresent(offer -> {
                    left.getOrDefault(LensKind.of(offer.unit()), List.of()).remove(offer.unit());
                    offers.add(offer);
                });
            }
        }
        return offers;
    }

    private Optional<Offer> offer(LensNeed need, List<Alternative> planned, Map<LensKind, List<LensUnit>> left) {
        LensKind kind = LensKind.of(need);
        return planned.stream()
                .filter(alternative -> !kind.equals(kind.withPower(alternative.power())))
                .sorted(Comparator.comparing(
                                (Alternative alternative) -> alternative.power().distanceTo(kind.power()))
                        .thenComparing(Alternative::power, Comparator.reverseOrder()))
                .flatMap(alternative -> carton(need, left.getOrDefault(kind.withPower(alternative.power()), List.of()))
                        .map(unit -> new Offer(need, alternative, unit))
                        .stream())
                .findFirst();
    }

    private Optional<LensUnit> carton(LensNeed need, List<LensUnit> alike) {
        return alike.stream()
                .filter(unit -> reach.serves(unit, need))
                .min(Comparator.comparingInt((LensUnit unit) -> reach.hectometres(unit.location(), need.location()))
                        .thenComparing(Holds.FIRST_EXPIRED_FIRST));
    }
}
