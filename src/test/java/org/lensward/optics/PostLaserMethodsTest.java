package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.CORNEA_AFTER_LASER;
import static org.lensward.finding.FindingCode.CORNEA_PERHAPS_RESHAPED;
import static org.lensward.finding.FindingCode.POST_LASER_METHOD;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;
import static org.lensward.optics.OpticsSpecimen.seen;
import static org.lensward.optics.OpticsSpecimen.shape;
import static org.lensward.optics.Reshaping.FLATTENED_BY_LASER;
import static org.lensward.optics.Reshaping.STEEPENED_BY_LASER;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;

class PostLaserMethodsTest {

    private static final CornealHistory HISTORY = new CornealHistory(Dioptres.of(44), Dioptres.of(-6), Dioptres.of(0));

    @Test
    void without_history_a_flattened_cornea_has_two_methods() {
        var methods = PostLaserMethods.of(new Measured<>(FLATTENED_BY_LASER, SOMEWHERE), Optional.empty());
        assertThat(methods.value().orElseThrow())
                .extracting(method -> method.formula().name())
                .containsExactly(FormulaName.HAIGIS_L, FormulaName.SHAMMAS_MYOPIC);
        assertThat(methods.findings()).isEmpty();
    }

    @Test
    void with_history_double_k_comes_first() {
        var methods = PostLaserMethods.of(new Measured<>(FLATTENED_BY_LASER, SOMEWHERE), Optional.of(HISTORY));
        assertThat(methods.value().orElseThrow())
                .extracting(PostLaserMethod::words)
                .startsWith("SRK/T double-K", "T2 double-K", "Holladay 1 double-K", "Hoffer Q double-K")
                .endsWith("Haigis-L", "Shammas-PL");
        Finding named = methods.value().orElseThrow().get(0).named(SOMEWHERE);
        assertThat(named.code()).isEqualTo(POST_LASER_METHOD);
        assertThat(named.message()).contains("SRK/T double-K", "before the laser");
    }

    @Test
    void a_steepened_cornea_has_its_own_regression() {
        var methods = PostLaserMethods.of(new Measured<>(STEEPENED_BY_LASER, SOMEWHERE), Optional.empty());
        assertThat(methods.value().orElseThrow())
                .extracting(method -> method.formula().name())
                .containsExactly(FormulaName.SHAMMAS_HYPEROPIC);
    }

    @ParameterizedTest
    @EnumSource(names = {"INCISED", "UNKNOWN"})
    void a_cornea_no_method_was_made_for_is_refused_even_with_history(Reshaping reshaping) {
        var methods = PostLaserMethods.of(new Measured<>(reshaping, SOMEWHERE), Optional.of(HISTORY));
        assertThat(methods.value()).isEmpty();
        assertThat(methods.findings()).extracting(Finding::code).containsExactly(CORNEA_AFTER_LASER);
    }

    /** K - change at the cornea: 44 - 6/(1 + 0.072) = 38.403, by hand. */
    @Test
    void the_history_gives_the_corneal_power() {
        assertThat(HISTORY.powerNow().value()).isCloseTo(44 - 6 / 1.072, within(1e-12));
    }

    /** Aramberri 2003, abstract: double-K asks for more power than the formula alone (20.25 against 17.85 D, nine myopic eyes). */
    @Test
    void after_myopic_laser_double_k_asks_for_more_power_than_the_formula_alone() {
        EyeShape shape = shape(26.5, 38.4);
        Dioptres plano = Dioptres.of(0);
        double alone = seen(new SrkT(), shape).power(plano).value();
        double doubled = seen(new DoubleK(new SrkT(), Dioptres.of(44), Dioptres.of(38.4)), shape)
                .power(plano)
                .value();
        assertThat(doubled - alone).isBetween(1.0, 4.0);
    }

    /**
     * One eye made of published relations: K 44 and -6 D before the laser, so 38.40 D now by history, and the keratometer 0.23 D too steep
     * for each dioptre corrected (Shammas 2003, abstract). All methods must mean the same eye; the formula alone must not.
     */
    @Test
    void the_methods_mean_the_same_eye() {
        double corrected = 6 / 1.072;
        EyeShape shape = shape(25.9, HISTORY.powerNow().value() + 0.23 * corrected);
        var methods = PostLaserMethods.of(new Measured<>(FLATTENED_BY_LASER, SOMEWHERE), Optional.of(HISTORY))
                .value()
                .orElseThrow();
        assertThat(methods).hasSize(6).allSatisfy(method -> assertThat(
                        seen(method.formula(), shape).power(Dioptres.of(0)).value())
                .as(method.words())
                .isBetween(19.9, 21.1));
        assertThat(seen(new SrkT(), shape).power(Dioptres.of(0)).value()).isLessThan(18);
    }

    @Test
    void a_cornea_flatter_than_corneas_are_is_asked_about() {
        Limit<Dioptres> flattest = new Limit<>(Dioptres.of(40), "test");
        Limit<Dioptres> steepest = new Limit<>(Dioptres.of(48), "test");
        assertThat(PostLaserMethods.suspect(new Measured<>(Dioptres.of(38), SOMEWHERE), flattest, steepest))
                .map(Finding::code)
                .contains(CORNEA_PERHAPS_RESHAPED);
        assertThat(PostLaserMethods.suspect(new Measured<>(Dioptres.of(40), SOMEWHERE), flattest, steepest))
                .isEmpty();
    }
}
