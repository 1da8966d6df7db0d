package org.lensward.outcome;

import java.time.LocalDate;
import org.lensward.eye.Laterality;

/**
 * One operation, with what was known before it and how the eye then was. What is not told stays absent; {@link Exclusion} says what
 * each absence costs.
 *
 * @param keys opaque keys of person and operation
 * @param side the eye operated on
 * @param operatedOn the day of the operation
 * @param surgeon key of the operating surgeon, such as {@code Practitioner/s1}
 * @param lens the lens implanted, whatever was planned
 * @param before what the plan rested on, as it was then
 * @param after what followed
 */
public record OperatedEye(
        EyeKeys keys,
        Laterality side,
        LocalDate operatedOn,
        String surgeon,
        ImplantedLens lens,
        BeforeSurgery before,
        AfterSurgery after) {}
