package org.lensward.optics.accuracy;

import java.util.Comparator;
import java.util.List;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * How far this eye may end from its predicted refraction, and why. After Norrby, J Cataract Refract Surg 2008;34:368-376: each
 * contributor's deviation is carried to the spectacle plane by the derivative of the thin eye, and the variances are added.
 *
 * <p>First order and normal about the prediction. Errors are taken as independent: what correlates the errors of length, corneal power
 * and predicted lens position, and any bias of a formula in long eyes, is not here, so that the deviation is a lower estimate. The
 * length's error grows with the eye where it is given as a coefficient of variation. The error of
 * the measured length counts as one of the optical length, that of K as one of the formula's corneal power. Scatter of the pupil, corneal asphericity and the
 * posterior cornea are not modelled.
 *
 * @param contributions in the order of {@link Contributor}
 */
public record ErrorBudget(List<Contribution> contributions) {

    public ErrorBudget {
        contributions = List.copyOf(contributions);
    }

    /**
     * One contributor's share.
     *
     * @param contributor what
     * @param deviation one standard deviation of the refraction at the spectacle plane from this alone
     * @param source where its spread comes from
     */
    public record Contribution(Contributor contributor, Dioptres deviation, String source) {

        double variance() {
            return deviation.value() * deviation.value();
        }
    }

    /**
     * The budget of one lens in one eye.
     *
     * @param eye as the formula sees it
     * @param label the lens power, within the tolerance of its label
     * @param spreads of this eye's measurements
     */
    public static ErrorBudget of(ThinEye eye, Dioptres label, Spreads spreads) {
        Slopes slopes = Slopes.of(eye, label);
        var labelled = LabelTolerance.spread(label);
        return new ErrorBudget(List.of(
                part(
                        Contributor.AXIAL_LENGTH,
                        slopes.length() * spreads.axialLength().deviation().value(),
                        spreads.axialLength().source()),
                part(
                        Contributor.CORNEAL_POWER,
                        slopes.cornealPower()
                                * spreads.cornealPower().deviation().value(),
                        spreads.cornealPower().source()),
                part(
                        Contributor.LENS_POSITION,
                        slopes.lensPosition()
                                * spreads.lensPosition().deviation().value(),
                        spreads.lensPosition().source()),
                part(
                        Contributor.LENS_LABEL,
                        slopes.lensPower() * labelled.deviation().value(),
                        labelled.source()),
                part(
                        Contributor.REFRACTION,
                        spreads.refraction().deviation().value(),
                        spreads.refraction().source())));
    }

    private static Contribution part(Contributor contributor, double deviation, String source) {
        return new Contribution(contributor, Dioptres.of(Math.abs(deviation)), source);
    }

    /** One standard deviation of the refraction about its prediction. */
    public Dioptres deviation() {
        return Dioptres.of(Math.sqrt(variance()));
    }

    private double variance() {
        double sum = 0;
        for (Contribution contribution : contributions) {
            sum += contribution.variance();
        }
        return sum;
    }

    /** The contributor to improve first. */
    public Contribution largest() {
        return contributions.stream()
                .max(Comparator.comparingDouble(Contribution::variance))
                .orElseThrow();
    }

    /** The part of the variance that a contributor accounts for, from 0 to 1. */
    public PureNumber share(Contributor contributor) {
        return contributions.stream()
                .filter(contribution -> contribution.contributor() == contributor)
                .map(contribution -> PureNumber.of(contribution.variance() / variance()))
                .findFirst()
                .orElseThrow();
    }

    /** The mean absolute error of such eyes: sqrt(2/pi) standard deviations. */
    public Dioptres meanAbsoluteError() {
        return Dioptres.of(Math.sqrt(2 / Math.PI * variance()));
    }

    /**
     * The chance to end no further than this from the target.
     *
     * @param limit such as 0.50 D
     * @param predicted spherical equivalent the lens is expected to leave
     * @param target spherical equivalent wanted
     */
    public Probability within(Dioptres limit, Dioptres predicted, Dioptres target) {
        return Landing.within(limit, predicted.minus(target), deviation());
    }
}
