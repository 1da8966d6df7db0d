package org.lensward.record;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;

/**
 * Values that belong together: one Observation with its components, or the flat keratometry of one eye and day. Flat, panel and
 * component shapes all become this.
 *
 * @param evidence the Observation, or the first of them
 * @param words what it is called in a message
 * @param eyes every eye it names, itself or through its panel
 * @param both whether it names both eyes on purpose
 * @param day when it was taken
 * @param methods its method and its panel's
 * @param scalars its values by what they are
 * @param lenses the lens models it speaks of
 */
record MeasurementGroup(
        Evidence evidence,
        String words,
        Set<Laterality> eyes,
        boolean both,
        Optional<LocalDate> day,
        List<CodeableConcept> methods,
        Map<MeasurementCode, Scalar> scalars,
        List<String> lenses) {

    /** Whether it holds nothing but scalars of a cornea, so that it may be one piece of a keratometry sent flat. */
    boolean pieceOfCornea() {
        return scalars.size() == 1 && scalars.keySet().iterator().next().ofCornea();
    }

    /** Whether the other group is of the same eye and day and says something this one does not. */
    boolean lacks(MeasurementGroup other) {
        return eyes.equals(other.eyes)
                && day.equals(other.day)
                && Collections.disjoint(scalars.keySet(), other.scalars.keySet());
    }

    /** Whether it serves the operation itself and not the choice of the lens. */
    boolean ofExamination() {
        return scalars.keySet().stream().allMatch(MeasurementCode::ofExamination);
    }

    /** Both groups as one. */
    MeasurementGroup with(MeasurementGroup other) {
        Map<MeasurementCode, Scalar> all = new EnumMap<>(scalars);
        all.putAll(other.scalars);
        return new MeasurementGroup(evidence, words, eyes, both, day, methods, all, lenses);
    }
}
