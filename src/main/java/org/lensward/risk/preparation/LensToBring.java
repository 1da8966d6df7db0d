package org.lensward.risk.preparation;

import org.lensward.lens.KitLens;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Dioptres;

/**
 * Lenses that must be in the building.
 *
 * @param role what they are for
 * @param model which model, as the hospital calls it
 * @param power the labelled power
 * @param count how many
 */
public record LensToBring(KitRole role, String model, Dioptres power, int count) {

    static LensToBring of(KitLens lens) {
        return new LensToBring(lens.role(), lens.model().name(), lens.power(), 1);
    }

    boolean isLike(LensToBring other) {
        return role == other.role && model.equals(other.model) && power.equals(other.power);
    }

    LensToBring plus(LensToBring other) {
        return new LensToBring(role, model, power, count + other.count);
    }
}
