package org.lensward.eye;

import org.lensward.quantity.Quantity;

/**
 * A threshold of a policy, with where it comes from.
 *
 * @param value the threshold
 * @param source citation, or "common practice, no source"
 */
public record Limit<Q extends Quantity>(Q value, String source) {

    public Limit {
        if (source.isBlank()) {
            throw new IllegalArgumentException("A limit of " + value + " without its source");
        }
    }
}
