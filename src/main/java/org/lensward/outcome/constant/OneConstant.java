package org.lensward.outcome.constant;

import java.util.Optional;
import org.lensward.optics.Constant;
import org.lensward.optics.FormulaName;
import org.lensward.optics.HaigisConstants;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * The constant of one formula that moves its lens as a whole: A, SF, pACD or a0.
 *
 * @param formula whose it is
 * @param all constants to start from; they have this formula's
 */
record OneConstant(FormulaName formula, LensConstants all) {

    /** Lens position per unit of A: SRK/T's ACD constant is 0.62467 A - 68.747 (Retzlaff et al. 1990). */
    private static final double PER_A = 0.62467;

    /** How far the lens moves back for one unit, in mm. */
    double millimetresPerUnit() {
        return usesA() ? PER_A : 1;
    }

    private boolean usesA() {
        return formula == FormulaName.SRK_T || formula == FormulaName.T2;
    }

    /** This formula's constant alone, as it stands. */
    LensConstants alone() {
        return only(
                usesA() ? all.aConstant() : Optional.empty(),
                formula == FormulaName.HOLLADAY_1 ? all.surgeonFactor() : Optional.empty(),
                formula == FormulaName.HOFFER_Q ? all.personalisedAcd() : Optional.empty(),
                formula == FormulaName.HAIGIS ? all.haigis() : Optional.empty());
    }

    /** This formula's constant alone, moved so that the lens lies that much further back. */
    LensConstants moved(double millimetres) {
        double by = millimetres / millimetresPerUnit();
        LensConstants now = alone();
        return only(
                now.aConstant().map(a -> derived(PureNumber.of(a.value().value() + by))),
                now.surgeonFactor().map(sf -> derived(Millimetres.of(sf.value().value() + by))),
                now.personalisedAcd()
                        .map(acd -> derived(Millimetres.of(acd.value().value() + by))),
                now.haigis()
                        .map(three -> derived(new HaigisConstants(
                                Millimetres.of(three.value().a0().value() + by),
                                three.value().a1(),
                                three.value().a2()))));
    }

    /** Haigis' three alone. */
    static LensConstants three(double a0, double a1, double a2) {
        return only(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(derived(new HaigisConstants(Millimetres.of(a0), PureNumber.of(a1), PureNumber.of(a2)))));
    }

    private static <T> Constant<T> derived(T value) {
        return new Constant<>(value, false);
    }

    private static LensConstants only(
            Optional<Constant<PureNumber>> a,
            Optional<Constant<Millimetres>> surgeonFactor,
            Optional<Constant<Millimetres>> acd,
            Optional<Constant<HaigisConstants>> haigis) {
        return new LensConstants(a, surgeonFactor, acd, haigis);
    }
}
