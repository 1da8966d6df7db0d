package org.lensward.lens;

import java.util.Locale;
import java.util.Optional;
import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.PostLaserMethod;
import org.lensward.optics.Spread;
import org.lensward.quantity.Dioptres;

/**
 * One way to compute this eye's lens.
 *
 * @param words the method's name, such as "SRK/T" or "SRK/T double-K"
 * @param formula what computes it
 * @param variant in what form
 * @param afterLaser the method it is, where the cornea was reshaped
 */
public record PlanningMethod(String words, Formula formula, Variant variant, Optional<PostLaserMethod> afterLaser) {

    static PlanningMethod asPublished(Formula formula) {
        return new PlanningMethod(formula.name().toString(), formula, Variant.AS_PUBLISHED, Optional.empty());
    }

    /** The prediction error's standard deviation that a paper reports, where the error budget does not hold. */
    public Optional<Spread<Dioptres>> reported() {
        return afterLaser.map(PostLaserMethod::reported);
    }

    /** The formula it rests on. */
    public FormulaName name() {
        return formula.name();
    }

    /** Its name in an id or a code, such as {@code srk-t-double-k}. */
    public String code() {
        String published = name().name().toLowerCase(Locale.ROOT).replace('_', '-');
        return switch (variant) {
            case AS_PUBLISHED -> published;
            case LONG_EYE -> published + "-long-eye";
            case DOUBLE_K -> published + "-double-k";
        };
    }
}
