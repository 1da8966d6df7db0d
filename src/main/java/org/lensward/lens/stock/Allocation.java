package org.lensward.lens.stock;

import static org.lensward.finding.FindingCode.LENS_HELD_UNUSED;
import static org.lensward.finding.FindingCode.LENS_NOT_IN_STOCK;
import static org.lensward.finding.FindingCode.LENS_ORDER_LATE;
import static org.lensward.finding.FindingCode.LENS_SHARED;
import static org.lensward.finding.FindingCode.LENS_TO_BE_FETCHED;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;

/**
 * What the stock check found.
 *
 * @param assignments cartons with what they are for, by day, booking and role; every need is here or short
 * @param shortages what stays short, primaries first, then earlier days
 * @param orders what to order for the shortages, the first due first
 * @param heldInVain cartons promised to a booking looked at, which cannot serve it or which it does not need
 * @param free cartons nobody is promised
 */
public record Allocation(
        List<Assignment> assignments,
        List<Shortage> shortages,
        List<Order> orders,
        List<LensUnit> heldInVain,
        FreeStock free) {

    static final Comparator<LensNeed> BY_DAY = Comparator.comparing(LensNeed::day)
            .thenComparing(LensNeed::booking)
            .thenComparing(LensNeed::role)
            .thenComparing(LensKind::of);

    public Allocation {
        assignments = List.copyOf(assignments);
        shortages = List.copyOf(shortages);
        orders = List.copyOf(orders);
        heldInVain = List.copyOf(heldInVain);
    }

    /** The carton for that need, where it is covered. */
    public Optional<LensUnit> unitFor(LensNeed need) {
        return assignments.stream()
                .filter(assignment -> assignment.needs().contains(need))
                .map(Assignment::unit)
                .findFirst();
    }

    /** What people must know of one booking: what is short or late, to be fetched, shared, or held in vain. */
    public List<Finding> findings(Evidence booking) {
        String name = booking.resource();
        List<Finding> found = new ArrayList<>();
        shortages.stream()
                .filter(shortage -> shortage.need().booking().equals(name))
                .forEach(shortage -> found.add(Finding.of(
                        LENS_NOT_IN_STOCK,
                        booking,
                        shortage.need().role().code(),
                        LensKind.of(shortage.need()),
                        shortage.need().day(),
                        shortage.reason())));
        orders.stream()
                .filter(order -> order.late() && order.bookings().contains(name))
                .forEach(order -> found.add(
                        Finding.of(LENS_ORDER_LATE, booking, order.kind(), order.neededBy(), order.orderBy())));
        assignments.stream()
                .filter(assignment -> assignment.needs().stream()
                        .anyMatch(need -> need.booking().equals(name)))
                .forEach(assignment -> found.addAll(findings(assignment, booking)));
        heldInVain.stream()
                .filter(unit -> unit.heldFor().equals(Optional.of(name)))
                .forEach(unit -> found.add(Finding.of(
                        LENS_HELD_UNUSED,
                        List.of(unit.evidence(), booking),
                        unit.state().code())));
        return found;
    }

    private static List<Finding> findings(Assignment assignment, Evidence booking) {
        List<Evidence> evidence = List.of(assignment.unit().evidence(), booking);
        LensNeed need = assignment.needs().get(0);
        List<Finding> found = new ArrayList<>();
        assignment
                .transfer()
                .ifPresent(way -> found.add(Finding.of(
                        LENS_TO_BE_FETCHED, evidence, need.role().code(), way.from(), way.to(), need.day())));
        if (assignment.isShared()) {
            found.add(Finding.of(
                    LENS_SHARED,
                    evidence,
                    need.role().code(),
                    assignment.needs().size()));
        }
        return found;
    }
}
