package org.lensward.board.bank;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.board.api.Found;

/**
 * What the Bank page shows.
 *
 * @param mark changes when anything shown has changed
 * @param asOf when cartons were last looked at, such as {@code 14:03:07}
 * @param checked when the stock check was last made; none before the first
 * @param isAway whether the record did not answer the last time
 * @param site the site shown, or empty for all
 * @param strip by model and power
 * @param until the last day looked at
 * @param days how many days that is from today, today included
 * @param shorts what is short, primaries first
 * @param orders what to order for it, first due first
 * @param promises who is to have what, by day
 * @param expiring soon out of date or already, first to expire first; at most {@link #SHOWN}
 * @param expiringCount all of them
 * @param levels powers below par; at most {@link #SHOWN}
 * @param levelCount all of them
 * @param findings what the bank could not read
 */
record BankSheet(
        String mark,
        String asOf,
        Optional<String> checked,
        boolean isAway,
        String site,
        HeatStrip strip,
        LocalDate until,
        int days,
        List<Short> shorts,
        List<Supply> orders,
        List<Promise> promises,
        List<CartonLine> expiring,
        int expiringCount,
        List<Level> levels,
        int levelCount,
        List<Found> findings) {

    static final int SHOWN = 20;

    /**
     * A lens that is short.
     *
     * @param patient for whom
     * @param booking id of the booking
     * @param role in words
     * @param lens model and power
     * @param day of the operation
     * @param site where
     * @param reason why
     * @param instead the nearest power in stock and what it would leave
     * @param orderBy the last day for an order to arrive in time
     * @param isLate whether that day is past
     */
    record Short(
            String patient,
            String booking,
            String role,
            String lens,
            LocalDate day,
            String site,
            String reason,
            Optional<String> instead,
            Optional<LocalDate> orderBy,
            boolean isLate) {}

    /**
     * An order to make.
     *
     * @param count cartons
     * @param lens model and power
     * @param site where to
     * @param neededBy the day of the operations
     * @param orderBy the last day on which it arrives in time
     * @param isLate whether that day is past
     * @param bookings for how many
     */
    record Supply(
            int count, String lens, String site, LocalDate neededBy, LocalDate orderBy, boolean isLate, int bookings) {}

    /**
     * A carton held for somebody.
     *
     * @param day of the operation, where a plan says so
     * @param carton which, and for whom
     * @param isVain whether the booking cannot use it or does not need it
     */
    record Promise(Optional<LocalDate> day, CartonLine carton, boolean isVain) {}

    /**
     * A power below par.
     *
     * @param lens model and power
     * @param address of the page with its cartons
     * @param site where
     * @param onHand free and in date
     * @param onOrder under way
     * @param par what there ought to be
     * @param order how many to order
     */
    record Level(String lens, String address, String site, int onHand, int onOrder, int par, int order) {}

    /** Whether only some of what is on the shelf and soon out of date is shown. */
    public boolean isExpiringCut() {
        return expiringCount > expiring.size();
    }
}
