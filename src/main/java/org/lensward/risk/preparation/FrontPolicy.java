package org.lensward.risk.preparation;

import org.lensward.eye.Limit;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;

/**
 * Thresholds of the front of the eye.
 *
 * @param shallowChamber an anterior chamber depth, from the epithelium, below it is shallow
 * @param raisedPressure a pressure above it is lowered before the eye is opened
 * @param smallPupil a dilated pupil below it is small
 * @param fewCells an endothelial density below it is low
 * @param thickCornea a central thickness above it is a cornea that may already swell
 * @param bleedingAge years from which a haemorrhage behind the retina is likelier
 */
public record FrontPolicy(
        Limit<Millimetres> shallowChamber,
        Limit<MillimetresOfMercury> raisedPressure,
        Limit<Millimetres> smallPupil,
        Limit<CellsPerSquareMillimetre> fewCells,
        Limit<Millimetres> thickCornea,
        Limit<PureNumber> bleedingAge) {}
