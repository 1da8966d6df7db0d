package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Eye;
import org.lensward.eye.Person;
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
 * @param found what was doubtful while reading
 */
public record PlanningCase(
        Booking booking,
        Person person,
        Optional<Eye> eye,
        Optional<Eye> fellow,
        Catalogue catalogue,
        List<Finding> found) {

    public PlanningCase {
        found = List.copyOf(found);
    }
}
