package org.lensward.optics.toric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.optics.OpticsSpecimen;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

class ToricChoiceTest {

    private static final ThinEye THIN = OpticsSpecimen.thin(5.2, 23.5, 43);
    private static final List<Dioptres> STEPS = DoubleStream.of(1.0, 1.5, 2.25, 3.0, 3.75, 4.5)
            .mapToObj(Dioptres::of)
            .toList();

    private final ToricEye eye = new ToricEye(THIN, ToricSpecimen.astigmatism(2, 100));
    private final ToricChoice choice = ToricChoice.of(eye, THIN.power(Dioptres.of(0)), STEPS);

    /** The plane ratio (1336 / (1336 - d K))^2 for d 5.2 and K 43 (Fam and Lim 2007, value from memory). */
    @Test
    void the_ideal_cylinder_is_the_corneal_one_at_the_lens() {
        double ratio = Math.pow(1336 / (1336 - 5.2 * 43), 2);
        assertThat(choice.ideal().cylinder().value()).isCloseTo(2 * ratio, within(0.02));
    }

    @Test
    void the_step_next_to_the_ideal_is_chosen_and_laid_on_the_steep_meridian() {
        assertThat(choice.lens().cylinder().value()).isEqualTo(3.0);
        assertThat(choice.lens().axis().value()).isCloseTo(100, within(1e-9));
        assertThat(choice.overcorrects()).isTrue();
        for (Dioptres step : STEPS) {
            ToricLens other = new ToricLens(
                    choice.lens().equivalent(), step, choice.lens().axis());
            assertThat(choice.residual().cylinder())
                    .isGreaterThanOrEqualTo(eye.refraction(other).cylinder());
        }
    }

    /** Steep at 100 degrees: the eye is most myopic there, so its minus cylinder has its axis across, at 10. Textbook. */
    @Test
    void a_spherical_lens_leaves_the_corneal_astigmatism() {
        assertThat(choice.spherical().cylinder().value()).isCloseTo(-2, within(0.05));
        assertThat(choice.spherical().axis().value()).isCloseTo(10, within(1e-6));
    }

    @Test
    void a_cornea_without_astigmatism_gets_no_cylinder() {
        ToricChoice none = ToricChoice.of(new ToricEye(THIN, Astigmatism.NONE), Dioptres.of(21), STEPS);
        assertThat(none.lens().cylinder().value()).isZero();
        assertThat(none.overcorrects()).isFalse();
    }

    @Test
    void the_choice_says_what_turning_leaves() {
        assertThat(choice.rotations())
                .extracting(rotation -> rotation.by().value())
                .containsExactly(5.0, 10.0, 30.0);
        assertThat(choice.rotations().get(2).residual().cylinder())
                .isLessThan(choice.rotations().get(1).residual().cylinder());
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/felipe-2011.csv", useHeadersInDisplayName = true)
    void a_perfect_lens_that_turns_leaves_the_published_share(double rotation, double share, double margin) {
        ToricLens perfect = eye.lensFor(Dioptres.of(0));
        double left = -eye.refraction(perfect.rotated(Degrees.of(rotation)))
                .cylinder()
                .value();
        ToricLens without = new ToricLens(perfect.equivalent(), Dioptres.of(0), perfect.axis());
        double untreated = -eye.refraction(without).cylinder().value();
        assertThat(left / untreated).isCloseTo(share, within(margin));
    }
}
