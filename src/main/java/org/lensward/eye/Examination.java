package org.lensward.eye;

import java.util.Optional;
import org.lensward.eye.Readings.Dated;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;

/**
 * What was measured of an eye and its owner for the sake of the operation itself, the latest of each. What is absent is unknown.
 *
 * @param pressure inside the eye
 * @param endothelialDensity of the corneal endothelium
 * @param cornealThickness in the centre
 * @param zonuleLoss clock hours of zonule seen to be missing, 0 to 12
 * @param clotting international normalised ratio (INR) of the person's blood
 * @param openingDiameter of the capsule as it was opened, where that has been measured
 * @param openingDecentration of that opening's centre from the lens's axis
 */
public record Examination(
        Optional<Measured<MillimetresOfMercury>> pressure,
        Optional<Measured<CellsPerSquareMillimetre>> endothelialDensity,
        Optional<Measured<Millimetres>> cornealThickness,
        Optional<Measured<PureNumber>> zonuleLoss,
        Optional<Dated<PureNumber>> clotting,
        Optional<Measured<Millimetres>> openingDiameter,
        Optional<Measured<Millimetres>> openingDecentration) {

    /** An eye of which nothing of this was measured. */
    public static Examination none() {
        return new Examination(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
