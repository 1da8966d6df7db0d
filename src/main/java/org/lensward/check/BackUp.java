package org.lensward.check;

import org.lensward.lens.KitRole;

/**
 * A lens that stands by.
 *
 * @param role what it is for
 * @param lens which
 */
public record BackUp(KitRole role, CheckedLens lens) {

    /** As it is read aloud. */
    @Override
    public String toString() {
        return role.code() + " " + lens;
    }
}
