package org.lensward.optics.toric;

import org.lensward.optics.ThinEye;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * A thin eye whose cornea is astigmatic. Every meridian has the same lens position, the one the formula gave for the mean cornea, so
 * that the toric and the spherical plan are one eye (Fam and Lim, J Cataract Refract Surg 2007;33:1072, value from memory).
 *
 * @param eye as the formula sees it, its corneal power the mean of the meridians
 * @param cornea net astigmatism at the corneal plane, the incision's effect included
 */
public record ToricEye(ThinEye eye, Astigmatism cornea) {

    /** The eye of one meridian. */
    public ThinEye along(Degrees meridian) {
        return new ThinEye(eye.lensPosition(), eye.opticalLength(), corneal().along(meridian));
    }

    /**
     * The lens that would leave this spherical equivalent and no astigmatism: on each principal meridian the thin formula's power.
     *
     * @param target at the spectacle plane
     */
    public ToricLens lensFor(Dioptres target) {
        Degrees steep = cornea.steepMeridian();
        double least = along(steep).power(target).value();
        double most = along(Degrees.of(steep.value() + 90)).power(target).value();
        return new ToricLens(Dioptres.of((least + most) / 2), Dioptres.of(Math.max(0, most - least)), steep);
    }

    /** The refraction that this lens leaves, at the spectacle plane. */
    public SphereCylinder refraction(ToricLens lens) {
        Millimetres behindLens = eye.opticalLength().minus(eye.lensPosition());
        PowerMatrix toRetina = PowerMatrix.spherical(Dioptres.of(1000 * ThinEye.INDEX.value() / behindLens.value()));
        PowerMatrix atCornea = toRetina.minus(lens.matrix())
                .travelled(back(eye.lensPosition()), ThinEye.INDEX)
                .minus(corneal());
        return SphereCylinder.of(atCornea.travelledInAir(back(ThinEye.VERTEX_DISTANCE)));
    }

    private PowerMatrix corneal() {
        return PowerMatrix.of(eye.cornealPower(), cornea);
    }

    private static Millimetres back(Millimetres distance) {
        return Millimetres.of(-distance.value());
    }
}
