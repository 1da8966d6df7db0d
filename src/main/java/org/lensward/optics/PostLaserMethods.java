package org.lensward.optics;

import static org.lensward.finding.FindingCode.CORNEA_AFTER_LASER;
import static org.lensward.finding.FindingCode.CORNEA_PERHAPS_RESHAPED;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;

/**
 * Which methods may plan a lens behind a reshaped cornea. Standard formulas are never among them: the keratometer misreads the power of
 * such a cornea, and the formula misplaces the lens by it.
 */
public final class PostLaserMethods {

    private static final Spread<Dioptres> DOUBLE_K =
            new Spread<>(Dioptres.of(0.62), "Aramberri, J Cataract Refract Surg 2003;29:2063, abstract, 9 eyes");
    private static final Spread<Dioptres> HAIGIS_L =
            new Spread<>(Dioptres.of(0.721), "Wu et al., BMC Ophthalmol 2017;17:44, abstract");
    private static final Spread<Dioptres> SHAMMAS_MYOPIC =
            new Spread<>(Dioptres.of(0.698), "Wu et al., BMC Ophthalmol 2017;17:44, abstract");
    private static final Spread<Dioptres> SHAMMAS_HYPEROPIC =
            new Spread<>(Dioptres.of(0.58), "Shammas et al., J Cataract Refract Surg 2013;39:739, abstract, 24 eyes");

    private static final String WITHOUT_HISTORY = "needs no figures from before the laser";
    private static final String WITH_HISTORY =
            "the corneal power before the laser and the change of refraction are known";

    private PostLaserMethods() {}

    /**
     * The methods for this cornea, those with history first; withheld where none was made for it.
     *
     * @param reshaping what was done, with where the record says so
     * @param history figures from before the laser, where they are known
     */
    public static Outcome<List<PostLaserMethod>> of(Measured<Reshaping> reshaping, Optional<CornealHistory> history) {
        List<PostLaserMethod> withHistory =
                history.map(PostLaserMethods::withHistory).orElse(List.of());
        List<PostLaserMethod> without =
                switch (reshaping.value()) {
                    case FLATTENED_BY_LASER ->
                        List.of(
                                new PostLaserMethod("Haigis-L", new HaigisL(), WITHOUT_HISTORY, HAIGIS_L),
                                new PostLaserMethod(
                                        "Shammas-PL", Shammas.afterMyopicLaser(), WITHOUT_HISTORY, SHAMMAS_MYOPIC));
                    case STEEPENED_BY_LASER ->
                        List.of(new PostLaserMethod(
                                "Shammas-PHL", Shammas.afterHyperopicLaser(), WITHOUT_HISTORY, SHAMMAS_HYPEROPIC));
                    case INCISED, UNKNOWN -> List.of();
                };
        if (without.isEmpty()) {
            return Outcome.withheld(Finding.of(CORNEA_AFTER_LASER, reshaping.evidence(), reshaping.value()));
        }
        return Outcome.ready(
                Stream.concat(withHistory.stream(), without.stream()).toList());
    }

    private static List<PostLaserMethod> withHistory(CornealHistory history) {
        return Stream.of(FormulaName.SRK_T, FormulaName.T2, FormulaName.HOLLADAY_1, FormulaName.HOFFER_Q)
                .map(name -> new PostLaserMethod(
                        name + " double-K",
                        new DoubleK(Formulas.named(name), history.powerBefore(), history.powerNow()),
                        WITH_HISTORY,
                        DOUBLE_K))
                .toList();
    }

    /**
     * A cornea so flat or so steep that refractive surgery may have been forgotten.
     *
     * @param cornea mean keratometric power of an eye whose record mentions no such surgery
     * @param flattest flatter corneas are asked about
     * @param steepest steeper corneas are asked about
     */
    public static Optional<Finding> suspect(
            Measured<Dioptres> cornea, Limit<Dioptres> flattest, Limit<Dioptres> steepest) {
        double power = cornea.value().value();
        if (power >= flattest.value().value() && power <= steepest.value().value()) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                CORNEA_PERHAPS_RESHAPED,
                cornea.evidence(),
                cornea.value().rounded(),
                flattest.value().rounded(),
                steepest.value().rounded()));
    }
}
