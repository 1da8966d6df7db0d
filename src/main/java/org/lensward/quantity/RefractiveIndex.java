package org.lensward.quantity;

/**
 * A refractive index relative to air.
 *
 * @param value above 1 and below 2
 */
public record RefractiveIndex(double value) implements Quantity, Comparable<RefractiveIndex> {

    private static final String SYMBOL = "index";

    public RefractiveIndex {
        Decimal.requireFinite(value, SYMBOL);
        if (value <= 1 || value >= 2) {
            throw new IllegalArgumentException("A refractive index of the eye lies between 1 and 2, not at " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static RefractiveIndex of(double value) {
        return new RefractiveIndex(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static RefractiveIndex parse(String text) {
        return new RefractiveIndex(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(RefractiveIndex other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
