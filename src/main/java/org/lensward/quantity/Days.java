package org.lensward.quantity;

import java.time.LocalDate;

/**
 * A count of calendar days.
 *
 * @param value whole, from 0 to 36,525 (a century)
 */
public record Days(double value) implements Quantity, Comparable<Days> {

    private static final String SYMBOL = "days";
    private static final int CENTURY = 36_525;

    public Days {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0 || value > CENTURY || value != Math.rint(value)) {
            throw new IllegalArgumentException("Days are counted whole, from 0 to " + CENTURY + ", not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Days of(double value) {
        return new Days(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Days parse(String text) {
        return new Days(Decimal.parse(text, SYMBOL));
    }

    /** So many days earlier. */
    public LocalDate before(LocalDate day) {
        return day.minusDays((long) value);
    }

    /** So many days later. */
    public LocalDate after(LocalDate day) {
        return day.plusDays((long) value);
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Days other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
