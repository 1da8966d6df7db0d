package org.lensward.quantity;

/**
 * How densely the corneal endothelium is set with cells.
 *
 * @param value finite, not negative
 */
public record CellsPerSquareMillimetre(double value) implements Quantity, Comparable<CellsPerSquareMillimetre> {

    private static final String SYMBOL = "/mm2";

    public CellsPerSquareMillimetre {
        Decimal.requireFinite(value, SYMBOL);
        if (value < 0) {
            throw new IllegalArgumentException("A cell density is not negative, not " + value);
        }
    }

    /** The quantity of that size; refuses what the type cannot hold. */
    public static CellsPerSquareMillimetre of(double value) {
        return new CellsPerSquareMillimetre(value);
    }

    /** Reads what {@link #toString()} prints. */
    public static CellsPerSquareMillimetre parse(String text) {
        return new CellsPerSquareMillimetre(Decimal.parse(text, SYMBOL));
    }

    @Override
    public String symbol() {
        return SYMBOL;
    }

    @Override
    public int compareTo(CellsPerSquareMillimetre other) {
        return Double.compare(value, other.value);
    }

    @Override
    public String toString() {
        return Decimal.print(value, SYMBOL);
    }
}
