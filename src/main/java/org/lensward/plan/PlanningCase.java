package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Eye;
import org.lensward.eye.Person;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.lens.Catalogue;

/**
 * All that the record says of one booking.
 *
 * @param booking the operation
 * @param person the patient
 * @param eye the eye booked; absent where the booking does not say which
 * @param fellow the other eye; absent likewise
 * @param catalogue the lens models to choose from
 * @param also what lent a date, a side, a method or a part to something else that was read, and so belongs to the basis
 * @param found what was doubtful while reading
 */
public record PlanningCase(
        Booking booking,
        Person person,
        Optional<Eye> eye,
        Optional<Eye> fellow,
        Catalogue catalogue,
        List<Evidence> also,
        List<Finding> found) {

    public PlanningCase {
        also = List.copyOf(also);
        found = List.copyOf(found);
    }

    /** The same case with the booked eye's length mended. */
    PlanningCase measured(Biometry mended) {
        return new PlanningCase(booking, person, eye.map(old -> old.measured(mended)), fellow, catalogue, also, found);
    }
}
