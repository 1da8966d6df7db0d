package org.lensward.quantity;

/**
 * A length or a distance along the optical axis, in millimetres. Says nothing of where it is measured from.
 *
 * @param value finite; negative for a displacement only
 */
public record Millimetres(double value) implements Quantity, Comparable<Millimetres> {

    private static final String SYMBOL = "mm";

    public Millimetres {
        Decimal.requireFinite(value, SYMBOL);
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Millimetres of(double value) {
        return new Millimetres(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Millimetres parse(String text) {
        return new Millimetres(Decimal.parse(text, SYMBOL));
    }

    public Millimetres plus(Millimetres other) {
        return new Millimetres(value + other.value);
    }

    public Millimetres minus(Millimetres other) {
        return new Millimetres(value - other.value);
    }

    /** The size of the difference, whatever its sign. */
    public Millimetres distanceTo(Millimetres other) {
        return new Millimetres(Math.abs(value - other.value));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Millimetres other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
