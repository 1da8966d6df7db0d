package org.lensward.record;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Measured;
import org.lensward.eye.Readings;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What the Observations say of one eye.
 *
 * @param readings biometry, to choose from
 * @param pupil the latest diameter when dilated
 * @param surprise achieved minus predicted refraction of a lens already in the eye
 * @param also the prediction that the surprise was measured against
 * @param found what was doubtful in them
 */
record EyeMeasurements(
        Readings readings,
        Optional<Measured<Millimetres>> pupil,
        Optional<Measured<Dioptres>> surprise,
        List<Evidence> also,
        List<Finding> found) {}
