package org.lensward.quantity;

/** How quantities are checked, printed and read; shortest decimal that reads back to the same number. */
final class Decimal {

    private Decimal() {}

    static void requireFinite(double value, String symbol) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("A quantity in " + symbol + " must be a finite number, not " + value);
        }
    }

    static String print(double value, String symbol) {
        return value + " " + symbol;
    }

    static double parse(String text, String symbol) {
        String trimmed = text.strip();
        if (!trimmed.endsWith(" " + symbol)) {
            throw new IllegalArgumentException("Expected a number and the unit " + symbol + ", read '" + text + "'");
        }
        try {
            return Double.parseDouble(trimmed.substring(0, trimmed.length() - symbol.length()));
        } catch (NumberFormatException notANumber) {
            throw new IllegalArgumentException(
                    "Expected a number before " + symbol + ", read '" + text + "'", notANumber);
        }
    }
}
