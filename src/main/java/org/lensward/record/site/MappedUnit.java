package org.lensward.record.site;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import org.lensward.record.UnitKind;

/**
 * One local spelling of a unit. It never changes what a number means: either the spelling is another word for the UCUM unit, or the
 * hospital declares how many of the UCUM unit one of its own is.
 *
 * @param kind the kind of measurement it is used for
 * @param unit as the hospital writes it; empty, for pure numbers alone, where it writes none
 * @param ucum the UCUM code
 * @param factor how many of the UCUM unit one of the local is; above 0
 */
public record MappedUnit(UnitKind kind, String unit, String ucum, BigDecimal factor) {

    private static final double SAME = 1e-12;

    public MappedUnit {
        require(kind.valid(ucum), "'" + ucum + "' is no UCUM code of " + name(kind) + ", which are " + kind.accepted());
        require(!kind.valid(unit), "'" + unit + "' is UCUM already and needs no entry");
        require(!unit.isBlank() || kind == UnitKind.NUMBER, "a " + name(kind) + " without a unit stays without one");
        require(factor.signum() > 0, "the factor of '" + unit + "' is not above 0");
        Optional<Double> known = kind.factor(unit);
        double declared = factor.doubleValue() * kind.factor(ucum).orElseThrow();
        require(
                known.filter(each -> Math.abs(declared / each - 1) > SAME).isEmpty(),
                "'" + unit + "' would change what a number in it means");
    }

    /** The UCUM unit, and how many of it where that is not one. */
    @Override
    public String toString() {
        return factor.compareTo(BigDecimal.ONE) == 0 ? ucum : factor.toPlainString() + " " + ucum;
    }

    private static String name(UnitKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private static void require(boolean condition, String otherwise) {
        if (!condition) {
            throw new IllegalArgumentException(otherwise);
        }
    }
}
