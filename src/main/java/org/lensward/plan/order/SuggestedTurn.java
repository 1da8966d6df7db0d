package org.lensward.plan.order;

import java.util.List;

/**
 * One eye's turn in the suggested order.
 *
 * @param eye whose turn it is
 * @param reasons why here, and what to mind next to its neighbours; empty where it stays as booked for no reason
 */
public record SuggestedTurn(ListedEye eye, List<String> reasons) {

    public SuggestedTurn {
        reasons = List.copyOf(reasons);
    }
}
