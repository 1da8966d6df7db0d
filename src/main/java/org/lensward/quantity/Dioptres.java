package org.lensward.quantity;

/**
 * A vergence, a refractive power or a refraction, in dioptres (1/m). Says neither the plane nor the index it holds for.
 *
 * @param value finite, any sign
 */
public record Dioptres(double value) implements Quantity, Comparable<Dioptres> {

    private static final String SYMBOL = "D";

    public Dioptres {
        Decimal.requireFinite(value, SYMBOL);
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static Dioptres of(double value) {
        return new Dioptres(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static Dioptres parse(String text) {
        return new Dioptres(Decimal.parse(text, SYMBOL));
    }

    public Dioptres plus(Dioptres other) {
        return new Dioptres(value + other.value);
    }

    public Dioptres minus(Dioptres other) {
        return new Dioptres(value - other.value);
    }

    /** The size of the difference, whatever its sign. */
    public Dioptres distanceTo(Dioptres other) {
        return new Dioptres(Math.abs(value - other.value));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(Dioptres other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
