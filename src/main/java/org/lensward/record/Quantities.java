package org.lensward.record;

import java.math.BigDecimal;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/** Our quantities in UCUM. */
public final class Quantities {

    private Quantities() {}

    /** In {@code [diop]}. */
    public static Quantity dioptres(Dioptres value) {
        return quantity(value.value(), "D", "[diop]");
    }

    static Quantity millimetres(Millimetres value) {
        return quantity(value.value(), "mm", "mm");
    }

    static Quantity degrees(Degrees value) {
        return quantity(value.value(), "deg", "deg");
    }

    static Quantity percent(Probability value) {
        return quantity(Math.round(value.value() * 1000) / 10.0, "%", "%");
    }

    static Quantity number(PureNumber value) {
        return quantity(value.value(), "1", "1");
    }

    private static Quantity quantity(double value, String unit, String code) {
        return new Quantity()
                .setValue(new BigDecimal(Double.toString(value)))
                .setUnit(unit)
                .setSystem(Systems.UCUM)
                .setCode(code);
    }
}
