package org.lensward.plan;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.eye.Laterality;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.SurgeonGrade;

/**
 * One eye's operation as it was booked: the unit of work.
 *
 * @param evidence the booking in the record
 * @param eye which eye, where the booking says so without contradiction
 * @param operation the day, where it has one
 * @param target the refraction agreed with the patient, where it was recorded
 * @param lensModel the catalogue entry the surgeon named, such as {@code DeviceDefinition/lens-1}
 * @param surgeon the operating surgeon's grade
 * @param surgeonName the surgeon, as the record refers to them
 */
public record Booking(
        Evidence evidence,
        Optional<Laterality> eye,
        Optional<LocalDate> operation,
        Optional<Measured<Dioptres>> target,
        Optional<Measured<String>> lensModel,
        Optional<Measured<SurgeonGrade>> surgeon,
        Optional<String> surgeonName) {}
