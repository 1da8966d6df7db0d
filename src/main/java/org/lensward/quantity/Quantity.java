package org.lensward.quantity;

import java.util.Locale;

/** A number with its unit. */
public sealed interface Quantity
        permits Millimetres,
                Dioptres,
                Degrees,
                PureNumber,
                Probability,
                RefractiveIndex,
                MetresPerSecond,
                MillimetresOfMercury,
                CellsPerSquareMillimetre,
                Percent,
                Seconds,
                Days,
                Kilometres {

    /** The size in the type's own unit; always finite. */
    double value();

    /** The unit as a person writes it. */
    String symbol();

    /** To two decimals, as a message says it: {@code 23.45 mm}. */
    default String rounded() {
        return String.format(Locale.ROOT, "%.2f %s", value(), symbol());
    }

    /** The same with its sign: {@code +0.25 D}. */
    default String signed() {
        return String.format(Locale.ROOT, "%+.2f %s", value(), symbol());
    }
}
