package org.lensward.check;

import java.util.Optional;
import org.lensward.quantity.Dioptres;

/**
 * One lens as a carton or a plan names it.
 *
 * @param model the catalogue entry, such as {@code DeviceDefinition/lens-1}
 * @param power as labelled, signed
 * @param cylinder as labelled, for a toric lens
 */
public record CheckedLens(String model, Dioptres power, Optional<Dioptres> cylinder) {

    /** Whether two powers are one on a label: to a hundredth of a dioptre, finer than any step made (common practice, no source). */
    static boolean same(Dioptres one, Dioptres other) {
        return Math.round(one.value() * 100) == Math.round(other.value() * 100);
    }

    /** Model, power with its sign and cylinder alike. */
    public boolean sameAs(CheckedLens other) {
        return model.equals(other.model) && same(power, other.power) && sameCylinder(other);
    }

    boolean sameCylinder(CheckedLens other) {
        return cylinder.isPresent() == other.cylinder.isPresent()
                && cylinder.stream().allMatch(each -> same(each, other.cylinder.orElseThrow()));
    }

    /** As it is read aloud. */
    @Override
    public String toString() {
        return model + " " + power.signed()
                + cylinder.map(each -> ", cylinder " + each.rounded()).orElse("");
    }
}
