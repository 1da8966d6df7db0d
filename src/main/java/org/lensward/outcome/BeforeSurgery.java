package org.lensward.outcome;

import java.util.Map;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * What the plan rested on, as it stood then.
 *
 * @param biometry the measurements used
 * @param constants those used for the model implanted and that biometry's method
 * @param predicted spherical equivalent that each formula foretold for the lens implanted, at a vertex distance of 12 mm, where the plan
 *     recorded it
 * @param target spherical equivalent planned
 * @param rupture the chance of a ruptured capsule or vitreous loss as it was foretold
 * @param oddsRatio the product of the risk factors behind that chance, against the reference eye
 * @param residual astigmatism that the toric plan expected to remain in the refraction, at the spectacle plane
 */
public record BeforeSurgery(
        Optional<Biometry> biometry,
        Optional<LensConstants> constants,
        Map<FormulaName, Dioptres> predicted,
        Optional<Dioptres> target,
        Optional<Probability> rupture,
        Optional<PureNumber> oddsRatio,
        Optional<Astigmatism> residual) {

    public BeforeSurgery {
        predicted = Map.copyOf(predicted);
    }

    /** An eye of which the plan is lost. */
    public static BeforeSurgery unknown() {
        return new BeforeSurgery(
                Optional.empty(),
                Optional.empty(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
