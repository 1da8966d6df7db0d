package org.lensward.plan.order;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.quantity.Dioptres;

/**
 * One eye on a theatre list, in the order it was booked. Prints nothing that identifies.
 *
 * @param booking such as {@code ServiceRequest/b1}
 * @param patient such as {@code Patient/p1}
 * @param likeness keys of name and birth date; two patients who share one may be taken for each other
 * @param power of the primary lens, where one is planned
 * @param place whereabouts it belongs
 * @param reasons why it belongs there
 */
public record ListedEye(
        String booking,
        String patient,
        Set<String> likeness,
        Optional<Dioptres> power,
        Place place,
        List<String> reasons) {

    public ListedEye {
        likeness = Set.copyOf(likeness);
        reasons = List.copyOf(reasons);
    }

    /** Whether the two may be taken for each other: different patients alike in name or birth date. */
    boolean isNamesakeOf(ListedEye other) {
        return !patient.equals(other.patient) && !Collections.disjoint(likeness, other.likeness);
    }

    /** Whether the lens of one may be picked for the other: powers that differ, but by no more than that. */
    boolean hasPowerLike(ListedEye other, Dioptres step) {
        return power.isPresent()
                && other.power.isPresent()
                && !power.equals(other.power)
                && Math.abs(power.get().value() - other.power.get().value()) <= step.value() + 1e-9;
    }

    @Override
    public String toString() {
        return booking;
    }
}
