package org.lensward.quantity;

/**
 * A concentration as weight in volume, grams in a hundred millilitres; or a share of a whole where its use says so.
 *
 * @param value finite, not negative
 */
public record Percent(double value) implements Quantity, Comparable<Percent> {

    private static final String SYMBOL = "%";

    public Percent {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0) {
            throw new IllegalArgumentException("A share is not negative, not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Percent of(double value) {
        return new Percent(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Percent parse(String text) {
        return new Percent(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Percent other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
