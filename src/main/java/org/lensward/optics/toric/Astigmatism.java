package org.lensward.optics.toric;

import static org.lensward.finding.FindingCode.MERIDIAN_WITHOUT_ASTIGMATISM;
import static org.lensward.finding.FindingCode.STEEP_MERIDIAN_MISSING;

import java.util.List;
import java.util.Locale;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * Astigmatism as a vector of the double-angle plane, in which astigmatisms add.
 *
 * <pre>
 * x = C cos 2a
 * y = C sin 2a
 * </pre>
 *
 * C the magnitude in D, nought or more; a the meridian of <em>greatest</em> power, 0 to 180 degrees, the same for both eyes: 0 is
 * horizontal and angles grow anticlockwise as the examiner sees the eye. With the rule (a = 90) x is negative, against the rule (a = 0)
 * positive. Holladay, Moran and Kezirian, J Cataract Refract Surg 2001;27:61 (value from memory).
 *
 * @param x the part along 0 degrees (positive) or 90 degrees (negative)
 * @param y the part along 45 degrees (positive) or 135 degrees (negative)
 */
public record Astigmatism(Dioptres x, Dioptres y) {

    /** No astigmatism. */
    public static final Astigmatism NONE = new Astigmatism(Dioptres.of(0), Dioptres.of(0));

    /**
     * From its size and the meridian of greatest power.
     *
     * @param magnitude nought or more
     * @param steep any angle
     */
    public static Astigmatism of(Dioptres magnitude, Degrees steep) {
        if (magnitude.value() < 0) {
            throw new IllegalArgumentException("Astigmatism has a size and a steep meridian, not " + magnitude);
        }
        double twice = Math.toRadians(2 * steep.value());
        return new Astigmatism(
                Dioptres.of(magnitude.value() * Math.cos(twice)), Dioptres.of(magnitude.value() * Math.sin(twice)));
    }

    /** The astigmatism of a keratometry by the index 1.3375; withheld where its meridian was not recorded. */
    public static Outcome<Astigmatism> measured(Measured<Keratometry> cornea) {
        Keratometry keratometry = cornea.value();
        Dioptres magnitude = keratometry.astigmatism();
        if (magnitude.value() == 0) {
            List<Finding> odd = keratometry.steepMeridian().stream()
                    .map(steep -> Finding.of(MERIDIAN_WITHOUT_ASTIGMATISM, cornea.evidence(), steep))
                    .toList();
            return Outcome.ready(NONE, odd);
        }
        return keratometry
                .steepMeridian()
                .map(steep -> Outcome.ready(of(magnitude, steep)))
                .orElseGet(() -> Outcome.withheld(Finding.of(
                        STEEP_MERIDIAN_MISSING,
                        cornea.evidence(),
                        String.format(Locale.ROOT, "%.2f D", magnitude.value()))));
    }

    public Astigmatism plus(Astigmatism other) {
        return new Astigmatism(x.plus(other.x), y.plus(other.y));
    }

    public Astigmatism minus(Astigmatism other) {
        return new Astigmatism(x.minus(other.x), y.minus(other.y));
    }

    /** The same size with its meridians turned anticlockwise. */
    public Astigmatism rotated(Degrees by) {
        return of(magnitude(), Degrees.of(steepMeridian().value() + by.value()));
    }

    /** The difference between greatest and least power; nought or more. */
    public Dioptres magnitude() {
        return Dioptres.of(Math.hypot(x.value(), y.value()));
    }

    /** The meridian of greatest power, from 0 to below 180 degrees; 0 where there is no astigmatism. */
    public Degrees steepMeridian() {
        double angle = Math.toDegrees(Math.atan2(y.value(), x.value())) / 2;
        double turned = angle < 0 ? angle + 180 : angle;
        return Degrees.of(turned >= 180 ? 0 : turned);
    }

    /** Where the steep meridian lies. */
    public Rule rule() {
        double steep = steepMeridian().value();
        if (steep >= 60 && steep <= 120) {
            return Rule.WITH;
        }
        return steep <= 30 || steep >= 150 ? Rule.AGAINST : Rule.OBLIQUE;
    }

    /** Where a cornea is steep: within 30 degrees of vertical, of horizontal, or between (common practice, no source). */
    public enum Rule {
        WITH,
        AGAINST,
        OBLIQUE
    }
}
