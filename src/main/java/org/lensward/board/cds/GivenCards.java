package org.lensward.board.cds;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Which booking a card spoke of, for its feedback. The latest only, in memory: after a restart feedback names its card alone. */
final class GivenCards {

    private static final int MOST = 10_000;

    private final Map<String, String> bookings = new LinkedHashMap<>();

    synchronized void remember(String card, String booking) {
        bookings.remove(card);
        bookings.put(card, booking);
        if (bookings.size() > MOST) {
            bookings.remove(bookings.keySet().iterator().next());
        }
    }

    synchronized Optional<String> booking(String card) {
        return Optional.ofNullable(bookings.get(card));
    }
}
