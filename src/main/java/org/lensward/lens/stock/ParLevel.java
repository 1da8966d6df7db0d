package org.lensward.lens.stock;

import org.lensward.quantity.PureNumber;

/**
 * How many cartons of one kind ought to be there, and how many are.
 *
 * @param kind model, power and cylinder
 * @param onHand free cartons still in date when the lead time is over
 * @param onOrder cartons ordered and not yet delivered
 * @param expected mean demand during the lead time
 * @param par what on hand and on order should come to
 */
public record ParLevel(LensKind kind, int onHand, int onOrder, PureNumber expected, int par) {

    /** What to order to come back to par; nought if nothing is missing. */
    public int suggestedOrder() {
        return Math.max(0, par - onHand - onOrder);
    }
}
