package org.lensward.optics;

import java.util.Optional;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * The constants of one lens model for one biometry method.
 *
 * @param aConstant of SRK/T and T2
 * @param surgeonFactor of Holladay 1
 * @param personalisedAcd pACD of Hoffer Q
 * @param haigis a0, a1 and a2
 */
public record LensConstants(
        Optional<Constant<PureNumber>> aConstant,
        Optional<Constant<Millimetres>> surgeonFactor,
        Optional<Constant<Millimetres>> personalisedAcd,
        Optional<Constant<HaigisConstants>> haigis) {

    /** Haigis' weights where nobody has derived better ones (Haigis et al. 2000). */
    private static final PureNumber STANDARD_A1 = PureNumber.of(0.4);

    private static final PureNumber STANDARD_A2 = PureNumber.of(0.1);

    /** Constants as someone published them; what is missing stays missing. */
    public static LensConstants published(
            Optional<PureNumber> aConstant,
            Optional<Millimetres> surgeonFactor,
            Optional<Millimetres> personalisedAcd,
            Optional<HaigisConstants> haigis) {
        return new LensConstants(
                aConstant.map(Constant::published),
                surgeonFactor.map(Constant::published),
                personalisedAcd.map(Constant::published),
                haigis.map(Constant::published));
    }

    /** Only an A-constant is known; the rest is converted from it. */
    public static LensConstants ofAConstant(PureNumber a) {
        return published(Optional.of(a), Optional.empty(), Optional.empty(), Optional.empty())
                .completed();
    }

    /**
     * The same constants with every gap filled from the A-constant: SF = 0.5663 A - 65.60 (Holladay et al. 1988),
     * pACD = 0.58357 A - 63.896 (Hoffer 1993), a0 = 0.62467 A - 72.434 (Retzlaff et al. 1990, Haigis 2000). Each conversion holds for
     * the average eye only. Without an A-constant nothing changes.
     */
    public LensConstants completed() {
        if (aConstant.isEmpty()) {
            return this;
        }
        double a = aConstant.get().value().value();
        return new LensConstants(
                aConstant,
                surgeonFactor.or(() -> Optional.of(Constant.convertedAs(Millimetres.of(0.5663 * a - 65.60)))),
                personalisedAcd.or(() -> Optional.of(Constant.convertedAs(Millimetres.of(0.58357 * a - 63.896)))),
                haigis.or(() -> Optional.of(Constant.convertedAs(
                        new HaigisConstants(Millimetres.of(0.62467 * a - 72.434), STANDARD_A1, STANDARD_A2)))));
    }

    /** Whether nothing at all is known. */
    public boolean isEmpty() {
        return aConstant.isEmpty() && surgeonFactor.isEmpty() && personalisedAcd.isEmpty() && haigis.isEmpty();
    }

    /** Whether the formula's own constant is there, published or converted. */
    public boolean has(FormulaName formula) {
        return switch (formula) {
            case SRK_T, T2, SHAMMAS_MYOPIC, SHAMMAS_HYPEROPIC -> aConstant.isPresent();
            case HOLLADAY_1 -> surgeonFactor.isPresent();
            case HOFFER_Q -> personalisedAcd.isPresent();
            case HAIGIS, HAIGIS_L -> haigis.isPresent();
        };
    }

    /** Whether the formula's own constant was converted rather than derived. */
    public boolean convertedFor(FormulaName formula) {
        return switch (formula) {
            case SRK_T, T2, SHAMMAS_MYOPIC, SHAMMAS_HYPEROPIC ->
                aConstant.map(Constant::converted).orElse(false);
            case HOLLADAY_1 -> surgeonFactor.map(Constant::converted).orElse(false);
            case HOFFER_Q -> personalisedAcd.map(Constant::converted).orElse(false);
            case HAIGIS, HAIGIS_L -> haigis.map(Constant::converted).orElse(false);
        };
    }
}
