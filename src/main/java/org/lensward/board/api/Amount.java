package org.lensward.board.api;

import org.lensward.quantity.Quantity;

/**
 * A number with its unit, as JSON carries it.
 *
 * @param value the size
 * @param unit as a person writes it
 */
public record Amount(double value, String unit) {

    static Amount of(Quantity quantity) {
        return new Amount(quantity.value(), quantity.symbol());
    }
}
