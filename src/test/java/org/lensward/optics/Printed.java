package org.lensward.optics;

import java.math.BigDecimal;
import org.assertj.core.data.Offset;

/**
 * A number as a paper prints it.
 *
 * @param number with every digit that was printed
 */
record Printed(BigDecimal number) {

    static Printed of(String text) {
        return new Printed(new BigDecimal(text));
    }

    double value() {
        return number.doubleValue();
    }

    /** What a computed number may differ by and still be printed so, and a hair for representation. */
    Offset<Double> halfLastDigit() {
        return Offset.offset(number.ulp().doubleValue() / 2 + 1e-9);
    }

    Offset<Double> lastDigit() {
        return Offset.offset(number.ulp().doubleValue());
    }
}
