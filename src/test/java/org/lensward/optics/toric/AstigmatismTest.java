package org.lensward.optics.toric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.MERIDIAN_WITHOUT_ASTIGMATISM;
import static org.lensward.finding.FindingCode.STEEP_MERIDIAN_MISSING;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;
import static org.lensward.optics.toric.ToricSpecimen.astigmatism;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.eye.Keratometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

class AstigmatismTest {

    @ParameterizedTest
    @CsvSource({
        "90, WITH",
        "61, WITH",
        "119, WITH",
        "0, AGAINST",
        "29, AGAINST",
        "151, AGAINST",
        "179, AGAINST",
        "45, OBLIQUE",
        "135, OBLIQUE",
        "59, OBLIQUE",
        "121, OBLIQUE"
    })
    void the_rule_follows_the_steep_meridian(double steep, Astigmatism.Rule rule) {
        assertThat(astigmatism(1, steep).rule()).isEqualTo(rule);
    }

    /** By hand; coefficients from memory (see PosteriorCornea). Positive x is against the rule. */
    @ParameterizedTest
    @CsvSource({"1.50, 90, 0.881, 90", "1.50, 0, 1.897, 0", "0.00, 0, 0.508, 0.5", "1.50, 45, 1.496, 35"})
    void abulafia_koch_takes_from_the_rule_and_gives_against_it(
            double measured, double steep, double net, double netSteep) {
        Astigmatism cornea = PosteriorCornea.ABULAFIA_KOCH.net(astigmatism(measured, steep));
        assertThat(cornea.magnitude().value()).isCloseTo(net, within(0.001));
        assertThat(cornea.steepMeridian().value()).isCloseTo(netSteep, within(0.5));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/eom-2016.csv", useHeadersInDisplayName = true)
    void eom_takes_from_the_rule_and_gives_against_it(
            double anterior, double meridian, double net, double netMeridian) {
        Astigmatism cornea = PosteriorCornea.EOM.net(astigmatism(anterior, meridian));
        assertThat(cornea.magnitude().value()).isCloseTo(net, within(0.005));
        assertThat(cornea.steepMeridian().value()).isCloseTo(netMeridian, within(1e-6));
    }

    /** 0.05 * 1 + 0.27 added at 180 to 1 D at 45, by hand: hypot(0.32, 1). */
    @Test
    void eom_moves_an_oblique_cornea_too() {
        assertThat(PosteriorCornea.EOM.net(astigmatism(1, 45)).magnitude().value())
                .isCloseTo(Math.hypot(0.32, 1), within(1e-9));
        assertThat(PosteriorCornea.NEGLECTED.net(astigmatism(1, 45))).isEqualTo(astigmatism(1, 45));
    }

    /** An incision flattens its meridian: half a dioptre at 90 takes as much from a cornea steep there. Textbook. */
    @Test
    void an_incision_flattens_its_meridian() {
        Incision superior = new Incision(Dioptres.of(0.5), Degrees.of(90));
        assertThat(superior.after(astigmatism(1.25, 90)).magnitude().value()).isCloseTo(0.75, within(1e-9));
        assertThat(superior.after(astigmatism(1.25, 0)).magnitude().value()).isCloseTo(1.75, within(1e-9));
    }

    @Test
    void a_keratometry_gives_its_vector() {
        var measured = Astigmatism.measured(cornea(8.0, 7.7, Optional.of(Degrees.of(100))));
        assertThat(measured.findings()).isEmpty();
        assertThat(measured.value().orElseThrow().magnitude().value())
                .isCloseTo(337.5 / 7.7 - 337.5 / 8.0, within(1e-9));
        assertThat(measured.value().orElseThrow().steepMeridian().value()).isCloseTo(100, within(1e-9));
    }

    @Test
    void astigmatism_without_a_meridian_is_withheld() {
        var measured = Astigmatism.measured(cornea(8.0, 7.7, Optional.empty()));
        assertThat(measured.value()).isEmpty();
        assertThat(measured.findings()).extracting(Finding::code).containsExactly(STEEP_MERIDIAN_MISSING);
    }

    @Test
    void a_meridian_without_astigmatism_is_odd() {
        var measured = Astigmatism.measured(cornea(7.8, 7.8, Optional.of(Degrees.of(90))));
        assertThat(measured.value()).contains(Astigmatism.NONE);
        assertThat(measured.findings()).extracting(Finding::code).containsExactly(MERIDIAN_WITHOUT_ASTIGMATISM);
        assertThat(Astigmatism.measured(cornea(7.8, 7.8, Optional.empty())).findings())
                .isEmpty();
    }

    @Test
    void sizes_are_not_negative() {
        assertThatIllegalArgumentException().isThrownBy(() -> astigmatism(-1, 90));
        assertThatIllegalArgumentException().isThrownBy(() -> new Incision(Dioptres.of(-0.1), Degrees.of(90)));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SphereCylinder(Dioptres.of(0), Dioptres.of(1), Degrees.of(90)));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ToricLens(Dioptres.of(20), Dioptres.of(-1), Degrees.of(90)));
    }

    @Test
    void a_refraction_is_written_as_a_prescription() {
        assertThat(new SphereCylinder(Dioptres.of(0.25), Dioptres.of(-0.75), Degrees.of(0.2)))
                .hasToString("+0.25 -0.75 x 180");
    }

    private static Measured<Keratometry> cornea(double flat, double steep, Optional<Degrees> meridian) {
        return new Measured<>(new Keratometry(Millimetres.of(flat), Millimetres.of(steep), meridian), SOMEWHERE);
    }
}
