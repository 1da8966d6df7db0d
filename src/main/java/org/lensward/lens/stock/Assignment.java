package org.lensward.lens.stock;

import java.util.List;
import java.util.Optional;

/**
 * One carton and what it is for.
 *
 * @param unit the carton
 * @param needs one, or those of one role, day and site it stands by for; never empty
 * @param transfer the way it must be sent, unless it lies at the site already
 */
public record Assignment(LensUnit unit, List<LensNeed> needs, Optional<Transfer> transfer) {

    public Assignment {
        needs = List.copyOf(needs);
        if (needs.isEmpty()) {
            throw new IllegalArgumentException("A carton assigned to nobody: " + unit.evidence());
        }
    }

    /** Whether it stands by for more than one operation. */
    public boolean isShared() {
        return needs.size() > 1;
    }
}
