package org.lensward.quantity;

/**
 * A number of unit one: a lens constant such as the A-constant, an odds ratio, a signal-to-noise ratio.
 *
 * @param value finite, any sign
 */
public record PureNumber(double value) implements Quantity, Comparable<PureNumber> {

    private static final String SYMBOL = "1";

    public PureNumber {
        Decimal.requireFinite(value, SYMBOL);
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static PureNumber of(double value) {
        return new PureNumber(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static PureNumber parse(String text) {
        return new PureNumber(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(PureNumber other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
