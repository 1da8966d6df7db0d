package org.lensward.outcome.opening;

import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Days;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.opening.OpeningTechnique;

/**
 * How openings of one kind fared.
 *
 * @param technique by which they were made
 * @param planned diameter, to the nearest quarter of a millimetre
 * @param openings of this kind that were measured when made
 * @param meanMade mean diameter when made
 * @param times at follow-ups, earliest first
 */
public record OpeningCourse(
        OpeningTechnique technique, Millimetres planned, long openings, Millimetres meanMade, List<At> times) {

    public OpeningCourse {
        times = List.copyOf(times);
    }

    /**
     * At one time after surgery.
     *
     * @param from days after surgery, inclusive
     * @param to days after surgery, exclusive
     * @param eyes measured, each once
     * @param contraction mean share of its diameter as made that an opening lost, in per cent; below nought if they grew
     * @param contractionDeviation standard deviation of that; empty for a single eye
     * @param areaLost mean share of its area, in per cent
     * @param decentration mean, where measured
     */
    public record At(
            Days from,
            Days to,
            long eyes,
            PureNumber contraction,
            Optional<PureNumber> contractionDeviation,
            PureNumber areaLost,
            Optional<Millimetres> decentration) {}
}
