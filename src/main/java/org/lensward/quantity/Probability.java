package org.lensward.quantity;

/**
 * A chance between nought and one.
 *
 * @param value from 0 to 1 inclusive
 */
public record Probability(double value) implements Quantity, Comparable<Probability> {

    private static final String SYMBOL = "probability";

    public Probability {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0 || value > 1) {
            throw new IllegalArgumentException("A probability lies between 0 and 1, not at " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Probability of(double value) {
        return new Probability(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Probability parse(String text) {
        return new Probability(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Probability other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
