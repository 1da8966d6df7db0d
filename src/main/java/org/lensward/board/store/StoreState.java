package org.lensward.board.store;

import java.time.Instant;
import java.util.Optional;
import org.lensward.record.bank.BankView;

/**
 * What the board knows of the bank at one moment.
 *
 * @param standing every carton
 * @param checked the stock check of the coming days; none before the first
 * @param checkedAt when the record was asked for it
 * @param isAway whether the record did not answer the last time it was asked
 */
public record StoreState(
        BankView.Standing standing, Optional<StockDesk.Checked> checked, Instant checkedAt, boolean isAway) {

    /** Changes when anything that is shown has changed. */
    public String mark() {
        int content = standing.units().hashCode() * 31 + standing.findings().hashCode();
        return Integer.toHexString(content) + "-" + Long.toHexString(checkedAt.toEpochMilli())
                + (isAway ? "-away" : "");
    }
}
