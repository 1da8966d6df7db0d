package org.lensward.optics;

import org.lensward.quantity.Quantity;

/**
 * How far values scatter about their mean, with where that comes from.
 *
 * @param deviation one standard deviation, or a coefficient of variation where it says so; nought or more
 * @param source citation, or "value from memory"
 */
public record Spread<Q extends Quantity>(Q deviation, String source) {

    public Spread {
        if (deviation.value() < 0 || source.isBlank()) {
            throw new IllegalArgumentException("A spread is nought or more and has a source: " + deviation);
        }
    }
}
