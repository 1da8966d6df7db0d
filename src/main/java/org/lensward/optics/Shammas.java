package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.PureNumber;

/**
 * Shammas' formula for corneas after laser, without history.
 *
 * <pre>
 * Kc = 1.14 K - 6.8             after myopic laser (PL):  Shammas et al., Am J Ophthalmol 2003;136:426-432, abstract
 * Kc = 1.0457 K - 1.9538        after hyperopic laser (PHL): Shammas et al., J Cataract Refract Surg 2013;39:739-744, abstract
 * C  = 0.5835 A - 64.40 + 0.05
 * P  = 1336 / (AL - 0.1 (AL - 23) - C) - 1 / (1.0125 / (Kc + R) - C / 1336)      J Cataract Refract Surg 2007;33:31-36
 * </pre>
 *
 * K measured keratometric power by 1.3375 in D, AL axial length in mm, A the A-constant, C lens position in mm, R refraction at the
 * cornea in D. The power equation is a value from memory and agrees with secondary sources; C's conversion is quoted by a congress
 * abstract only and is 0.5 mm shallower than Hoffer's pACD. The position does not depend on K, so the lens is placed well. As a
 * {@link ThinEye} the cornea has Kc / 1.0125; R then enters whole instead of divided by 1.0125, which differs from the printed equation
 * by 0.01 D for each dioptre of target refraction and not at all for plano.
 *
 * @param name which of the two regressions
 * @param slope of the corneal power
 * @param offset of the corneal power
 */
public record Shammas(FormulaName name, PureNumber slope, Dioptres offset) implements Formula {

    /** For a cornea flattened by myopic laser. */
    public static Shammas afterMyopicLaser() {
        return new Shammas(FormulaName.SHAMMAS_MYOPIC, PureNumber.of(1.14), Dioptres.of(-6.8));
    }

    /** For a cornea steepened by hyperopic laser. */
    public static Shammas afterHyperopicLaser() {
        return new Shammas(FormulaName.SHAMMAS_HYPEROPIC, PureNumber.of(1.0457), Dioptres.of(-1.9538));
    }

    /** The corneal power by the method's regression, on the keratometric scale. */
    public Dioptres correctedPower(Dioptres measured) {
        return Dioptres.of(slope.value() * measured.value() + offset.value());
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        double a = constants.aConstant().orElseThrow().value().value();
        double al = shape.axialLength().value();
        double lensPosition = 0.5835 * a - 64.40 + 0.05;
        double opticalLength = al - 0.1 * (al - 23);
        double cornealPower = correctedPower(shape.keratometricPower()).value() / 1.0125;
        return Placement.place(name, shape, lensPosition, opticalLength, cornealPower, evidence);
    }
}
