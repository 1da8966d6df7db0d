package org.lensward.quantity;

/**
 * A distance by road, in kilometres.
 *
 * @param value finite, not negative
 */
public record Kilometres(double value) implements Quantity, Comparable<Kilometres> {

    private static final String SYMBOL = "km";

    public Kilometres {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0) {
            throw new IllegalArgumentException("A distance is not negative, not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Kilometres of(double value) {
        return new Kilometres(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Kilometres parse(String text) {
        return new Kilometres(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Kilometres other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
