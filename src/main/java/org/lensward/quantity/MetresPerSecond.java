package org.lensward.quantity;

/**
 * A speed of sound in a tissue or an implant, in metres per second.
 *
 * @param value above nought
 */
public record MetresPerSecond(double value) implements Quantity, Comparable<MetresPerSecond> {

    private static final String SYMBOL = "m/s";

    public MetresPerSecond {
        Decimal.requireFinite(value, SYMBOL);
        if (value <= 0) {
            throw new IllegalArgumentException("Sound moves: " + value + " m/s");
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static MetresPerSecond of(double value) {
        return new MetresPerSecond(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static MetresPerSecond parse(String text) {
        return new MetresPerSecond(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(MetresPerSecond other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
