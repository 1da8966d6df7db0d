package org.lensward.quantity;

/**
 * A pressure, such as that inside the eye, in millimetres of mercury above that of the air.
 *
 * @param value finite, not negative
 */
public record MillimetresOfMercury(double value) implements Quantity, Comparable<MillimetresOfMercury> {

    private static final String SYMBOL = "mmHg";

    public MillimetresOfMercury {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0) {
            throw new IllegalArgumentException("A pressure in mmHg is not negative, not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static MillimetresOfMercury of(double value) {
        return new MillimetresOfMercury(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static MillimetresOfMercury parse(String text) {
        return new MillimetresOfMercury(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(MillimetresOfMercury other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
