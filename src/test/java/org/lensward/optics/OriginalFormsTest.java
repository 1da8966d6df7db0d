package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lensward.optics.OriginalForm.Given;

/** Each formula agrees with its printed form, derived again in another algebra, over AL 20-32 mm, K 38-49 D, ACD 2.0-4.5 mm. */
class OriginalFormsTest {

    /** Dioptres: both are the same mathematics, so only rounding may part them. */
    private static final double CLOSE = 1e-9;

    /** No target of nought: Hoffer's printed 1 / R has none. */
    private static final double[] TARGETS = {-10, -3, -0.5, -1e-3, 0.5, 6};

    private static Stream<Given> grid() {
        return steps(20, 32, 0.5).boxed().flatMap(length -> steps(38, 49, 0.5)
                .boxed()
                .flatMap(k -> steps(2, 4.5, 0.5).mapToObj(depth -> new Given(length, k, depth))));
    }

    private static DoubleStream steps(double from, double to, double step) {
        return IntStream.rangeClosed(0, (int) Math.round((to - from) / step)).mapToDouble(i -> from + i * step);
    }

    @Test
    void every_formula_has_a_printed_form() {
        assertThat(Arrays.stream(OriginalForms.values()).map(OriginalForms::formula))
                .containsExactlyInAnyOrderElementsOf(
                        Formulas.all().stream().map(Formula::name).toList());
        assertThat(Stream.concat(Formulas.all().stream(), Formulas.forReshapedCorneas().stream()))
                .extracting(Formula::name)
                .containsExactly(FormulaName.values());
    }

    @ParameterizedTest
    @EnumSource
    void power_agrees_with_the_printed_form(OriginalForms printed) {
        Formula formula = Formulas.named(printed.formula());
        grid().forEach(given -> {
            ThinEye eye = Eyes.see(formula, given.shape());
            for (double target : TARGETS) {
                assertThat(Eyes.power(eye, target))
                        .as("%s for %s, target %s", formula.name(), given, target)
                        .isCloseTo(printed.power(given, target), within(CLOSE));
            }
        });
    }

    @ParameterizedTest
    @EnumSource
    void power_agrees_with_ray_transfer(FormulaName name) {
        Formula formula = Formulas.named(name);
        grid().forEach(given -> {
            ThinEye eye = Eyes.see(formula, given.shape());
            for (double target : TARGETS) {
                assertThat(Eyes.power(eye, target))
                        .as("%s for %s, target %s", name, given, target)
                        .isCloseTo(RayTransfer.power(eye, target), within(CLOSE));
            }
        });
    }

    @Test
    void refraction_agrees_with_the_printed_fractions() {
        grid().forEach(given -> {
            assertThat(Eyes.refraction(Eyes.see(new SrkT(), given.shape()), 21.5))
                    .isCloseTo(RationalForms.srkT(given).refraction(21.5), within(CLOSE));
            assertThat(Eyes.refraction(Eyes.see(new T2(), given.shape()), 21.5))
                    .isCloseTo(RationalForms.t2(given).refraction(21.5), within(CLOSE));
            assertThat(Eyes.refraction(Eyes.see(new Holladay1(), given.shape()), 21.5))
                    .isCloseTo(RationalForms.holladay1(given).refraction(21.5), within(CLOSE));
        });
    }

    /** Back-solved position, d = ((L + q) - sqrt((q - L)^2 + 4000 n (q - L) / P)) / 2; undefined for a lens without power. */
    @ParameterizedTest
    @EnumSource
    void the_position_is_found_again_from_the_power(FormulaName name) {
        grid().forEach(given -> {
            ThinEye eye = Eyes.see(Formulas.named(name), given.shape());
            double length = eye.opticalLength().value();
            double q = 1336 / eye.cornealPower().value();
            double power = Eyes.power(eye, 0);
            double root = Math.sqrt((q - length) * (q - length) + 4 * 1336 * (q - length) / power);
            if (Math.abs(power) > 0.01) {
                assertThat((length + q - root) / 2)
                        .as("%s for %s", name, given)
                        .isCloseTo(eye.lensPosition().value(), within(1e-7));
            }
        });
    }
}
