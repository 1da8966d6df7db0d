package org.lensward.lens;

import java.util.Locale;
import java.util.Optional;
import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Spread;
import org.lensward.quantity.Dioptres;

/**
 * One way to compute this eye's lens.
 *
 * @param words the method's name, such as "SRK/T" or "SRK/T double-K"
 * @param formula what computes it
 * @param variant in what form
 * @param reported the prediction error's standard deviation that a paper reports, where the error budget does not hold
 */
public record PlanningMethod(String words, Formula formula, Variant variant, Optional<Spread<Dioptres>> reported) {

    static PlanningMethod asPublished(Formula formula) {
        return new PlanningMethod(formula.name().toString(), formula, Variant.AS_PUBLISHED, Optional.empty());
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
