package org.lensward.risk.preparation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.Quantity;

/** Quantities as a team reads them. */
final class Figures {

    private Figures() {}

    /** To two decimals without needless noughts: {@code 26.1 mm}, {@code 950 /mm2}, {@code 3} for a pure number. */
    static String of(Quantity quantity) {
        BigDecimal rounded = BigDecimal.valueOf(quantity.value()).setScale(2, RoundingMode.HALF_UP);
        String figure = rounded.stripTrailingZeros().toPlainString();
        return quantity instanceof PureNumber ? figure : figure + " " + quantity.symbol();
    }
}
