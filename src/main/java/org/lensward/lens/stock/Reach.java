package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What can be where by when.
 *
 * @param policy with the ways between sites
 * @param today from when a carton can be sent for
 */
record Reach(StockPolicy policy, LocalDate today) {

    /** Whether what lies at one site can be at another on that day. */
    boolean arrives(String from, String to, LocalDate day) {
        return from.equals(to)
                || policy.transfer(from, to).map(way -> way.arrives(today, day)).orElse(false);
    }

    /** Whether that carton is there and in date on the day. */
    boolean serves(LensUnit unit, LensNeed need) {
        return unit.isInDateOn(need.day()) && arrives(unit.location(), need.location(), need.day());
    }

    /** How far in hundreds of metres; nought within one site. */
    int hectometres(String from, String to) {
        return way(from, to).map(Transfer::hectometres).orElse(0);
    }

    Assignment assign(LensUnit unit, Slot slot) {
        return new Assignment(unit, slot.needs(), way(unit.location(), slot.location()));
    }

    private Optional<Transfer> way(String from, String to) {
        return from.equals(to) ? Optional.empty() : policy.transfer(from, to);
    }
}
