package org.lensward.optics.toric;

import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

/**
 * A power or a vergence that may differ between meridians, as a symmetric 2x2 matrix (Long, Am J Optom Physiol Opt 1976;53:127;
 * Harris, Optom Vis Sci; values from memory).
 *
 * <pre>
 * | m + x/2    y/2   |
 * |   y/2    m - x/2 |
 * </pre>
 *
 * m the mean power, x and y the {@link Astigmatism}, all in D. Along a meridian at angle t the power is m + (x cos 2t + y sin 2t) / 2.
 *
 * @param horizontal the element of 0 degrees
 * @param oblique the element off the diagonal
 * @param vertical the element of 90 degrees
 */
public record PowerMatrix(Dioptres horizontal, Dioptres oblique, Dioptres vertical) {

    /** The same power in every meridian. */
    public static PowerMatrix spherical(Dioptres power) {
        return new PowerMatrix(power, Dioptres.of(0), power);
    }

    /** From the mean power and what the meridians differ by. */
    public static PowerMatrix of(Dioptres mean, Astigmatism astigmatism) {
        double half = astigmatism.x().value() / 2;
        return new PowerMatrix(
                Dioptres.of(mean.value() + half),
                Dioptres.of(astigmatism.y().value() / 2),
                Dioptres.of(mean.value() - half));
    }

    public PowerMatrix plus(PowerMatrix other) {
        return new PowerMatrix(
                horizontal.plus(other.horizontal), oblique.plus(other.oblique), vertical.plus(other.vertical));
    }

    public PowerMatrix minus(PowerMatrix other) {
        return new PowerMatrix(
                horizontal.minus(other.horizontal), oblique.minus(other.oblique), vertical.minus(other.vertical));
    }

    /**
     * This vergence after the light has travelled on: V (I - (t/n) V)^-1.
     *
     * @param distance t, in the direction of the light; negative back towards its source
     * @param index n of the medium
     */
    public PowerMatrix travelled(Millimetres distance, RefractiveIndex index) {
        return stepped(distance.value() / (1000 * index.value()));
    }

    /** This vergence after the light has travelled through air. */
    public PowerMatrix travelledInAir(Millimetres distance) {
        return stepped(distance.value() / 1000);
    }

    private PowerMatrix stepped(double reduced) {
        double p = horizontal.value();
        double q = oblique.value();
        double s = vertical.value();
        double determinant = p * s - q * q;
        double scale = 1 / (1 - reduced * (p + s) + reduced * reduced * determinant);
        return new PowerMatrix(
                Dioptres.of((p - reduced * determinant) * scale),
                Dioptres.of(q * scale),
                Dioptres.of((s - reduced * determinant) * scale));
    }

    /** The power along one meridian. */
    public Dioptres along(Degrees meridian) {
        double twice = Math.toRadians(2 * meridian.value());
        Astigmatism difference = astigmatism();
        return Dioptres.of(mean().value()
                + (difference.x().value() * Math.cos(twice) + difference.y().value() * Math.sin(twice)) / 2);
    }

    /** The mean of all meridians: the spherical equivalent. */
    public Dioptres mean() {
        return Dioptres.of((horizontal.value() + vertical.value()) / 2);
    }

    /** What the meridians differ by. */
    public Astigmatism astigmatism() {
        return new Astigmatism(horizontal.minus(vertical), Dioptres.of(2 * oblique.value()));
    }
}
