package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * What to order: a supply request in the record.
 *
 * @param kind model, power and cylinder
 * @param count cartons, one at least
 * @param location the site they are needed at
 * @param neededBy the day of the operations
 * @param orderBy the last day on which an order arrives in time: the lead time before
 * @param bookings for whom, ascending
 * @param late whether that day is past
 */
public record Order(
        LensKind kind,
        int count,
        String location,
        LocalDate neededBy,
        LocalDate orderBy,
        List<String> bookings,
        boolean late) {

    static final Comparator<Order> BY_DUE_DAY =
            Comparator.comparing(Order::orderBy).thenComparing(Order::kind).thenComparing(Order::location);

    public Order {
        bookings = List.copyOf(bookings);
    }
}
