package org.lensward.check;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.quantity.Degrees;

/**
 * What people read, scanned and asked at a checkpoint. What is empty was not stated, and what was not stated differs.
 *
 * @param patient as read from the wristband or told
 * @param eyes the eye in each place where it is stated
 * @param plan the fingerprint printed on the plan's sheet
 * @param carton the carton in hand
 * @param axis the axis read from the sheet, for a toric lens
 * @param allergies what the patient does not tolerate, asked now; an empty set says none
 * @param backUps the lenses found standing by
 * @param people who read and who checked
 * @param at when, where it was
 */
public record Presented(
        Identity patient,
        EyesRead eyes,
        Optional<String> plan,
        Carton carton,
        Optional<Degrees> axis,
        Optional<Set<String>> allergies,
        List<BackUp> backUps,
        People people,
        OffsetDateTime at) {

    public Presented {
        allergies = allergies.map(Set::copyOf);
        backUps = List.copyOf(backUps);
    }

    @Override
    public String toString() {
        return "presented " + at;
    }
}
