package org.lensward.quantity;

/**
 * A time span in seconds.
 *
 * @param value finite, not negative
 */
public record Seconds(double value) implements Quantity, Comparable<Seconds> {

    private static final String SYMBOL = "s";

    public Seconds {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0) {
            throw new IllegalArgumentException("A time span is not negative, not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Seconds of(double value) {
        return new Seconds(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Seconds parse(String text) {
        return new Seconds(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Seconds other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
