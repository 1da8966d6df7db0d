package org.lensward.lens.stock;

import org.lensward.quantity.Days;

/**
 * How much of one kind a site uses.
 *
 * @param kind model, power and cylinder
 * @param used cartons opened in the time looked back on, not negative
 * @param over the time looked back on, one day at least
 * @param onOrder cartons ordered and not yet delivered, not negative
 */
public record Demand(LensKind kind, int used, Days over, int onOrder) {

    public Demand {
        if (used < 0 || onOrder < 0 || over.value() < 1) {
            throw new IllegalArgumentException(
                    "No demand of " + kind + ": " + used + " used over " + over + ", " + onOrder + " on order");
        }
    }
}
