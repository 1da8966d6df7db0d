package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.eye.Limit;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * How the anaesthetic is chosen and the blood's clotting judged.
 *
 * @param inOrder a rule for each kind, the preferred first
 * @param longEye an axial length above which a needle is refused
 * @param highestClotting international normalised ratio (INR) up to which one operates on warfarin
 * @param clottingDays days before the operation within which it must have been measured
 */
public record AnaestheticPolicy(
        List<AnaestheticRule> inOrder,
        Limit<Millimetres> longEye,
        Limit<PureNumber> highestClotting,
        Limit<PureNumber> clottingDays) {

    public AnaestheticPolicy {
        inOrder = List.copyOf(inOrder);
    }
}
