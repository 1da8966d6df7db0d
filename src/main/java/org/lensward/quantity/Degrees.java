package org.lensward.quantity;

/**
 * A plane angle in degrees: a meridian, an axis or a rotation.
 *
 * @param value finite, any sign
 */
public record Degrees(double value) implements Quantity, Comparable<Degrees> {

    private static final String SYMBOL = "deg";

    public Degrees {
        Decimal.requireFinite(value, SYMBOL);
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Degrees of(double value) {
        return new Degrees(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Degrees parse(String text) {
        return new Degrees(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Degrees other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
